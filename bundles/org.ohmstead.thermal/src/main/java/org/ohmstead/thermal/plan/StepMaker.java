// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.HeatEstimate;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.thermal.StepDemand;
import org.ohmstead.thermal.StepHeat;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.thermal.SupplyWaveform;

/** Works out what one step draws and heats. */
final class StepMaker {
    private final Project project;
    private final CableLead lead;
    private final Optional<FuseBank> fuses;

    StepMaker(Project project, CableLead lead, Optional<FuseBank> fuses) {
        this.project = project;
        this.lead = lead;
        this.fuses = fuses;
    }

    StepForecast make(PlannedStep planned) {
        ExpectedPower power = planned.warmUp()
                ? new ExpectedPower(
                        OptionalDouble.of(planned.known().orElseThrow().outputWatts()),
                        ExpectedPower.Basis.RATING,
                        WarmUp.note())
                : ExpectedPower.of(project, planned.step(), planned.known());
        if (power.watts().isEmpty()) {
            Range idle = project.heat().amplifier().idleWatts().orElse(Range.of(0));
            return new StepForecast(
                    planned.step().id(),
                    power,
                    0,
                    idle,
                    idle,
                    idle.high(),
                    Optional.empty(),
                    0,
                    OptionalDouble.empty(),
                    0,
                    Optional.empty(),
                    List.of());
        }
        double watts = power.watts().getAsDouble();
        StageLoad load = StageLoad.resistor(lowestOhms(planned));
        int outputs = outputs(planned);
        HeatEstimate heat = StepHeat.of(facts(planned), demand(planned, load, outputs, watts));
        double loudWatts = outputs * watts + heat.loudHeatWatts().high();
        Pulse supply = Pulse.ofMean(
                heat.supplyWatts().high(),
                Math.max(loudWatts, heat.supplyWatts().high()),
                Pulse.burst(planned.step().stimulus()));
        return withCurrent(planned, power, heat, supply);
    }

    private StepForecast withCurrent(PlannedStep planned, ExpectedPower power, HeatEstimate heat, Pulse supply) {
        double volts = planned.step().supplyVolts();
        SupplyWaveform shape = project.amplifier().supplyType() == SupplyType.DIRECT
                ? SupplyWaveform.RECTIFIED_SINE
                : SupplyWaveform.SMOOTH;
        SupplyCurrent loud = SupplyCurrent.of(supply.loud() / volts, shape);
        SupplyCurrent quiet = SupplyCurrent.of(supply.quiet() / volts, shape);
        Optional<Stimulus.ToneBurst> burst = Pulse.burst(planned.step().stimulus());
        SupplyCurrent current = burst.map(
                        train -> SupplyCurrent.bursts(loud, quiet, train.onSeconds(), train.periodSeconds()))
                .orElse(loud);
        double drop = lead.dropVolts(loud.averageAmps(), lead.limitCelsius());
        double sag = loud.averageAmps() * project.heat().supply().sourceOhms().orElse(0);
        List<String> remarks = new ArrayList<>();
        remarks.add(power.sentence());
        remarks.addAll(heat.remarks());
        return new StepForecast(
                planned.step().id(),
                power,
                heat.outputWatts(),
                heat.heatWatts(),
                heat.loudHeatWatts(),
                current.averageAmps() * volts,
                Optional.of(current),
                loud.averageAmps(),
                OptionalDouble.of(volts + drop + sag),
                drop,
                fuses.map(bank -> fuse(bank, loud, quiet, burst)),
                remarks);
    }

    private static FuseAnswer fuse(
            FuseBank bank, SupplyCurrent loud, SupplyCurrent quiet, Optional<Stimulus.ToneBurst> burst) {
        return burst.map(
                        train -> bank.bursts(loud.rmsAmps(), quiet.rmsAmps(), train.onSeconds(), train.periodSeconds()))
                .orElseGet(() -> bank.steady(loud.rmsAmps()));
    }

    private StepDemand demand(PlannedStep planned, StageLoad load, int outputs, double watts) {
        double loud = load.voltsRms(watts);
        Drive drive = Pulse.burst(planned.step().stimulus())
                .<Drive>map(train -> new Drive.Burst(
                        loud,
                        train.onSeconds(),
                        loud * Math.pow(10, train.lowLevelDb() / 20),
                        train.periodSeconds() - train.onSeconds()))
                .orElseGet(() -> new Drive.Sine(loud));
        double most = Math.max(
                watts,
                ExpectedPower.of(project, planned.step(), Optional.empty())
                        .watts()
                        .orElse(0));
        return new StepDemand(
                drive,
                load,
                outputs,
                planned.step().mode() == Mode.BRIDGED,
                planned.step().supplyVolts(),
                OptionalDouble.of(load.voltsRms(most)),
                planned.known().map(KnownPower::inputWatts).orElse(OptionalDouble.empty()));
    }

    /** Returns how many outputs have a load. */
    private int outputs(PlannedStep planned) {
        return planned.step().mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
    }

    private double lowestOhms(PlannedStep planned) {
        return planned.load().branches().stream()
                .limit(outputs(planned))
                .mapToDouble(LoadBranch::ohms)
                .min()
                .orElseThrow();
    }

    /**
     * What is known of the amplifier, with the rails at the step's volts where the type of its supply tells what they
     * do.
     */
    private AmplifierHeat facts(PlannedStep planned) {
        AmplifierHeat heat = project.heat().amplifier();
        Amplifier amplifier = project.amplifier();
        if (heat.railVolts().isEmpty()
                || heat.railSupplyVolts().isEmpty()
                || amplifier.supplyType() == SupplyType.UNKNOWN) {
            return heat;
        }
        double volts = planned.step().supplyVolts();
        double ratio = amplifier.supplyType() == SupplyType.REGULATED
                ? 1
                : volts / heat.railSupplyVolts().getAsDouble();
        return new AmplifierHeat(
                heat.outputClass(),
                OptionalDouble.of(heat.railVolts().getAsDouble() * ratio),
                OptionalDouble.of(volts),
                heat.converterEfficiencyRatio(),
                heat.idleWatts(),
                heat.caseKelvinPerWatt(),
                heat.caseJoulesPerKelvin(),
                heat.deviceKelvinPerWatt(),
                heat.deviceLimitCelsius(),
                heat.caseLimitCelsius(),
                heat.sinkSize());
    }
}
