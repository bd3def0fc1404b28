// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.thermal.CableHeating;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.HeatEstimate;
import org.ohmstead.thermal.StepDemand;
import org.ohmstead.thermal.SupplyAnswer;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.thermal.SupplyDemand;
import org.ohmstead.thermal.SupplyFeed;
import org.ohmstead.thermal.SupplyNoSolution;
import org.ohmstead.thermal.SupplyNode;
import org.ohmstead.thermal.SupplySource;
import org.ohmstead.thermal.SupplyWaveform;

/**
 * The supply side of one step: what flows, what arrives, what cable and fuse make of it. Currents are those of the most heat that the
 * estimate allows for.
 *
 * @param current over whole periods; empty when the supply cannot bring it
 * @param loudCurrent during a burst, else as {@code current}
 * @param delivered at the amplifier's terminals while it is loud
 * @param cable once warm
 * @param fuse what the fuses make of it
 * @param faults what falls short, with remedies, whole sentences
 */
record StepSupply(
        Optional<SupplyCurrent> current,
        Optional<SupplyCurrent> loudCurrent,
        Optional<SupplyAnswer.Delivered> delivered,
        Optional<CableHeating.Settled> cable,
        Optional<FuseAnswer> fuse,
        List<String> faults) {
    /** Warming of the cable changes the ratio of RMS to average so little that twice is plenty. */
    private static final int ROUNDS = 2;

    StepSupply {
        faults = List.copyOf(faults);
    }

    /** What the supply side consists of. */
    record Side(
            SupplySource source,
            Optional<CableLead> lead,
            Optional<FuseBank> fuses,
            SupplyWaveform waveform,
            double ambientCelsius) {
        SupplyAnswer at(double watts, double cableCelsius) {
            return new SupplyNode(
                            source,
                            lead.map(each -> each.loopOhms(cableCelsius)).orElse(0.0))
                    .answer(new SupplyDemand.ConstantPower(watts));
        }
    }

    private record Flow(SupplyCurrent whole, SupplyCurrent loud, SupplyCurrent quiet, SupplyAnswer.Delivered loudest) {}

    /** Works it out. */
    static StepSupply of(StepDemand demand, HeatEstimate heat, Side side) {
        List<String> faults = new ArrayList<>();
        double celsius = side.ambientCelsius();
        Optional<Flow> flow = flow(demand, heat, side, celsius, faults);
        Optional<CableHeating.Settled> cable = Optional.empty();
        for (int round = 0; round < ROUNDS && flow.isPresent() && side.lead().isPresent(); round++) {
            SupplyCurrent whole = flow.get().whole();
            double ratio = whole.averageAmps() > 0 ? whole.rmsAmps() / whole.averageAmps() : 1;
            SupplyFeed.Warm warm = new SupplyFeed(side.source(), side.lead().get())
                    .settled(
                            new SupplyDemand.ConstantPower(heat.supplyWatts().high()),
                            Math.max(1, ratio),
                            side.ambientCelsius());
            cable = warm.cable();
            if (cable.isEmpty()) {
                faults.add(sentence(warm.answer()));
                flow = Optional.empty();
            } else {
                celsius = cable.get().conductorCelsius();
                flow = flow(demand, heat, side, celsius, faults);
            }
        }
        cable.filter(settled ->
                        settled.conductorCelsius() > side.lead().orElseThrow().limitCelsius())
                .ifPresent(settled -> faults.add(Texts.of(
                        "step.cable",
                        Texts.fixed(settled.conductorCelsius(), 0),
                        Texts.number(side.lead().orElseThrow().limitCelsius()))));
        Optional<FuseAnswer> fuse = flow.isPresent() && side.fuses().isPresent()
                ? Optional.of(fuse(side.fuses().get(), demand.drive(), flow.get()))
                : Optional.empty();
        fuse.filter(answer -> !(answer instanceof FuseAnswer.Carries))
                .ifPresent(answer -> faults.add(String.join(
                        " ", ThermalFuseCommand.sentences(side.fuses().get(), answer))));
        return new StepSupply(
                flow.map(Flow::whole),
                flow.map(Flow::loud),
                flow.map(Flow::loudest),
                cable,
                fuse,
                faults.stream().distinct().toList());
    }

    private static Optional<Flow> flow(
            StepDemand demand, HeatEstimate heat, Side side, double celsius, List<String> faults) {
        double average = heat.supplyWatts().high();
        if (!(demand.drive() instanceof Drive.Burst burst)) {
            Optional<SupplyAnswer.Delivered> delivered = delivered(side, average, celsius, faults);
            return delivered.map(answer -> {
                SupplyCurrent current = SupplyCurrent.of(answer.amps(), side.waveform());
                return new Flow(current, current, current, answer);
            });
        }
        double loudWatts = demand.outputs() * demand.load().watts(burst.loudVoltsRms())
                + heat.loudHeatWatts().high();
        double period = burst.loudSeconds() + burst.quietSeconds();
        double quietWatts = Math.max(0, (average * period - loudWatts * burst.loudSeconds()) / burst.quietSeconds());
        Optional<SupplyAnswer.Delivered> loud = delivered(side, loudWatts, celsius, faults);
        Optional<SupplyAnswer.Delivered> quiet = delivered(side, quietWatts, celsius, faults);
        if (loud.isEmpty() || quiet.isEmpty()) {
            return Optional.empty();
        }
        SupplyCurrent during = SupplyCurrent.of(loud.get().amps(), side.waveform());
        SupplyCurrent between = SupplyCurrent.of(quiet.get().amps(), side.waveform());
        return Optional.of(new Flow(
                SupplyCurrent.bursts(during, between, burst.loudSeconds(), period), during, between, loud.get()));
    }

    private static Optional<SupplyAnswer.Delivered> delivered(
            Side side, double watts, double celsius, List<String> faults) {
        SupplyAnswer answer = side.at(watts, celsius);
        if (answer instanceof SupplyAnswer.Delivered delivered) {
            return Optional.of(delivered);
        }
        faults.add(sentence(answer));
        return Optional.empty();
    }

    private static FuseAnswer fuse(FuseBank bank, Drive drive, Flow flow) {
        return drive instanceof Drive.Burst burst
                ? bank.bursts(
                        flow.loud().rmsAmps(),
                        flow.quiet().rmsAmps(),
                        burst.loudSeconds(),
                        burst.loudSeconds() + burst.quietSeconds())
                : bank.steady(flow.whole().rmsAmps());
    }

    private static String sentence(SupplyAnswer answer) {
        if (answer instanceof SupplyAnswer.InLimit limit) {
            return limit.reason() + " " + limit.remedy();
        }
        SupplyNoSolution none = (SupplyNoSolution) answer;
        return none.reason() + " " + none.remedy();
    }
}
