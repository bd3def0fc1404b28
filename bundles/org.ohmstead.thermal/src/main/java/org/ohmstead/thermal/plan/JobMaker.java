// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.Stimulus;
import org.ohmstead.thermal.BurstTrain;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.HeatModel;

/** Makes the jobs of a plan, with what must come before what and how long the handling between them takes. */
final class JobMaker {
    private final Project project;
    private final HeatModel model;
    private final double ambientCelsius;

    JobMaker(Project project, HeatModel model, double ambientCelsius) {
        this.project = project;
        this.model = model;
        this.ambientCelsius = ambientCelsius;
    }

    /** Returns the powers of amplifier and cable in a step, by the source's id. */
    static Map<String, Pulse> powers(PlannedStep planned, StepForecast step, CableLead lead) {
        Optional<Stimulus.ToneBurst> burst = Pulse.burst(planned.step().stimulus());
        Map<String, Pulse> powers = new HashMap<>();
        powers.put(
                AmplifierBodies.SOURCE,
                Pulse.ofMean(step.heatWatts().high(), step.loudHeatWatts().high(), burst));
        powers.put(
                AmplifierBodies.LIKELY,
                Pulse.ofMean(step.heatWatts().middle(), step.loudHeatWatts().middle(), burst));
        // A cable is far slower than bursts; its heat goes by the RMS current over whole periods.
        step.current().ifPresent(current -> powers.put(CableLead.ID, Pulse.steady(lead.chainWatts(current.rmsAmps()))));
        return powers;
    }

    ScheduleTask task(List<PlannedStep> planned, List<StepForecast> steps, List<Map<String, Pulse>> powers) {
        Pacing pacing = project.heat().pacing();
        List<HeatJob> jobs = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            jobs.add(job(planned.get(i), steps.get(i), powers.get(i)));
        }
        Range idle = project.heat().amplifier().idleWatts().orElse(Range.of(0));
        List<Double> idleWatts =
                new ArrayList<>(Collections.nCopies(model.sources().size(), 0.0));
        set(idleWatts, AmplifierBodies.SOURCE, idle.high());
        set(idleWatts, AmplifierBodies.LIKELY, idle.middle());
        return new ScheduleTask(
                model,
                ambientCelsius,
                pacing.marginKelvin(),
                jobs,
                idleWatts,
                idle.middle(),
                ChangeOvers.of(planned, (from, to) -> change(pacing, from, to), first -> 0),
                precedence(planned),
                List.of(),
                Optional.empty());
    }

    private void set(List<Double> watts, String source, double value) {
        int index = model.sourceIndex(source);
        if (index >= 0) {
            watts.set(index, value);
        }
    }

    private HeatJob job(PlannedStep planned, StepForecast step, Map<String, Pulse> powers) {
        double[] loud = new double[model.sources().size()];
        double[] quiet = new double[loud.length];
        for (int source = 0; source < loud.length; source++) {
            Pulse pulse = powers.getOrDefault(model.sources().get(source), Pulse.steady(0));
            loud[source] = pulse.loud();
            quiet[source] = pulse.quiet();
        }
        Optional<Stimulus.ToneBurst> burst = Pulse.burst(planned.step().stimulus());
        Optional<BurstTrain> train = burst.map(
                each -> new BurstTrain(loud, each.onSeconds(), quiet, each.periodSeconds() - each.onSeconds()));
        double[] mean = train.map(BurstTrain::averageWatts).orElse(loud);
        return new HeatJob(
                planned.step().id(),
                planned.seconds(),
                DoubleStream.of(mean).boxed().toList(),
                train.map(this::ripple).orElse(Map.of()),
                step.outputWatts() + step.heatWatts().middle(),
                project.heat().pacing().restSecondsBefore(planned.step().id()).orElse(0),
                stress(planned));
    }

    /**
     * How far each point can swing above what the mean powers give. Once the bursts have gone on for long it is the
     * settled ripple; at first it is more, as the train begins with its loud part: by what the settled swing lacks of
     * the mean just before that.
     */
    private Map<String, Double> ripple(BurstTrain train) {
        double[] before = train.settledBeforeLoud(model);
        double[] mean = model.settled(train.averageWatts());
        double[] lack = model.cold();
        for (int mode = 0; mode < lack.length; mode++) {
            lack[mode] = Math.max(0, mean[mode] - before[mode]);
        }
        double[] none = new double[model.sources().size()];
        Map<String, Double> ripple = new HashMap<>();
        for (int point = 0; point < model.points().size(); point++) {
            double kelvin = train.rippleKelvin(model, point) + model.riseKelvin(point, lack, none);
            ripple.put(model.points().get(point).id(), Math.max(0, kelvin));
        }
        return ripple;
    }

    /** The square of the supply volts over the load that each channel sees. */
    private static double stress(PlannedStep planned) {
        double ohms = planned.load().nominalOhms() / (planned.step().mode() == Mode.BRIDGED ? 2 : 1);
        return planned.warmUp()
                ? 0
                : planned.step().supplyVolts() * planned.step().supplyVolts() / ohms;
    }

    /** One person straps the load and wires the mode one after the other; the supply is set meanwhile. */
    private static double change(Pacing pacing, PlannedStep from, PlannedStep to) {
        double seconds = 0;
        if (from.step().mode() != to.step().mode()) {
            seconds += pacing.modeChangeSeconds();
        }
        if (!from.load().id().equals(to.load().id())) {
            seconds += pacing.loadChangeSeconds();
        }
        boolean sameVolts = from.step().supplyVolts() == to.step().supplyVolts();
        return sameVolts ? seconds : Math.max(seconds, pacing.supplyChangeSeconds());
    }

    private static List<Before> precedence(List<PlannedStep> planned) {
        List<Before> pairs = new ArrayList<>();
        for (int i = 0; i < planned.size(); i++) {
            for (int k = 0; k < planned.size(); k++) {
                if (i != k && precedes(planned.get(i), planned.get(k))) {
                    pairs.add(new Before(i, k));
                }
            }
        }
        return pairs;
    }

    private static boolean precedes(PlannedStep one, PlannedStep other) {
        if (one.warmUp() || other.warmUp()) {
            return one.warmUp();
        }
        boolean bridged = one.step().mode() == Mode.BRIDGED;
        if (bridged != (other.step().mode() == Mode.BRIDGED)) {
            return !bridged;
        }
        return one.step().mode() == other.step().mode()
                && one.load().id().equals(other.load().id())
                && one.step().stimulus().powerKind() == other.step().stimulus().powerKind()
                && one.step().supplyVolts() < other.step().supplyVolts();
    }
}
