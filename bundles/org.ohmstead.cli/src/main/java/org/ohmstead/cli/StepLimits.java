// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.BurstTrain;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.HeatAnswer;
import org.ohmstead.thermal.HeatEstimate;
import org.ohmstead.thermal.HeatLimits;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;
import org.ohmstead.thermal.StepDemand;

/**
 * How hot case and junctions of an amplifier get in a step, and what their limits allow; from the most heat and the most resistance that the
 * ranges allow for.
 *
 * @param temperatures of each point once it gets no warmer, at the end of a burst where there are bursts
 * @param onTime from cold
 * @param duty part of a period for which the step may be on
 * @param continuousHeatWatts heat that may go on for ever
 */
record StepLimits(
        List<Temperature> temperatures,
        Optional<HeatAnswer> onTime,
        Optional<HeatAnswer> duty,
        Optional<HeatAnswer> continuousHeatWatts) {
    /** A point with the range of its temperature. */
    record Temperature(HeatPoint point, Range celsius) {
        boolean tooHot() {
            return point.limitCelsius().isPresent()
                    && celsius.high() > point.limitCelsius().getAsDouble();
        }
    }

    StepLimits {
        temperatures = List.copyOf(temperatures);
    }

    /** Works it out; empty when the thermal resistance of the case is not known. */
    static Optional<StepLimits> of(
            AmplifierHeat facts,
            StepDemand demand,
            HeatEstimate heat,
            double ambientCelsius,
            double dutyPeriodSeconds) {
        if (facts.caseKelvinPerWatt().isEmpty()) {
            return Optional.empty();
        }
        HeatModel worst = model(facts, true);
        List<Temperature> temperatures = new ArrayList<>();
        List<Double> low = celsius(model(facts, false), demand, heat, false, ambientCelsius);
        List<Double> high = celsius(worst, demand, heat, true, ambientCelsius);
        for (int i = 0; i < low.size(); i++) {
            temperatures.add(new Temperature(worst.points().get(i), new Range(low.get(i), high.get(i))));
        }
        boolean limited =
                worst.points().stream().anyMatch(point -> point.limitCelsius().isPresent());
        if (!limited) {
            return Optional.of(new StepLimits(temperatures, Optional.empty(), Optional.empty(), Optional.empty()));
        }
        HeatLimits limits = new HeatLimits(worst, ambientCelsius, 0);
        double[] on = {heat.heatWatts().high()};
        double[] idle = {Math.min(on[0], facts.idleWatts().map(Range::high).orElse(0.0))};
        boolean timed = facts.caseJoulesPerKelvin().isPresent();
        return Optional.of(new StepLimits(
                temperatures,
                timed ? Optional.of(limits.onTime(worst.cold(), on)) : Optional.empty(),
                timed ? Optional.of(limits.duty(on, idle, dutyPeriodSeconds)) : Optional.empty(),
                Optional.of(limits.continuousMultiple(new double[] {1}, new double[] {0}))));
    }

    /** Returns the answer to how many watts there may be from that to how many times one watt. */
    static HeatAnswer ofOneWatt(HeatAnswer multiple) {
        return multiple instanceof HeatAnswer.Bounded bounded
                ? new HeatAnswer.Bounded(bounded.figure(), Texts.three(bounded.figure()) + " W.")
                : multiple;
    }

    /** Returns the first point that gets too hot when the step goes on for ever. */
    Optional<Temperature> tooHot() {
        return temperatures.stream().filter(Temperature::tooHot).findFirst();
    }

    private static HeatModel model(AmplifierHeat facts, boolean hottest) {
        double kelvinPerWatt = end(facts.caseKelvinPerWatt(), hottest).orElseThrow();
        // Without a heat capacity no question about time is asked; any will do for those about the end.
        double joulesPerKelvin = end(facts.caseJoulesPerKelvin(), !hottest).orElse(1);
        HeatModel.Builder builder = new HeatModel.Builder();
        int source = builder.source("amplifier");
        int[] mode = {builder.mode(kelvinPerWatt * joulesPerKelvin, new int[] {source}, new double[] {kelvinPerWatt})};
        double[] weight = {1};
        builder.point(
                new HeatPoint("case", Texts.of("place.case"), facts.caseLimitCelsius()),
                mode,
                weight,
                new int[0],
                new double[0]);
        end(facts.deviceKelvinPerWatt(), hottest)
                .ifPresent(device -> builder.point(
                        new HeatPoint("device", Texts.of("place.device"), facts.deviceLimitCelsius()),
                        mode,
                        weight,
                        new int[] {source},
                        new double[] {device}));
        return builder.build();
    }

    private static OptionalDouble end(Optional<Range> range, boolean high) {
        return range.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(high ? range.get().high() : range.get().low());
    }

    private static List<Double> celsius(
            HeatModel model, StepDemand demand, HeatEstimate heat, boolean high, double ambientCelsius) {
        double average = high ? heat.heatWatts().high() : heat.heatWatts().low();
        double loud = high ? heat.loudHeatWatts().high() : heat.loudHeatWatts().low();
        List<Double> celsius = new ArrayList<>();
        for (int point = 0; point < model.points().size(); point++) {
            if (demand.drive() instanceof Drive.Burst burst && burst.quietSeconds() > 0) {
                double period = burst.loudSeconds() + burst.quietSeconds();
                double quiet = Math.max(0, (average * period - loud * burst.loudSeconds()) / burst.quietSeconds());
                BurstTrain train = new BurstTrain(
                        new double[] {loud}, burst.loudSeconds(), new double[] {quiet}, burst.quietSeconds());
                celsius.add(ambientCelsius + train.settledPeak(model, point).riseKelvin());
            } else {
                celsius.add(model.settledCelsius(point, new double[] {average}, ambientCelsius));
            }
        }
        return celsius;
    }
}
