// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ohmstead.curves.PowerCurveFit;
import org.ohmstead.curves.internal.StageData;
import org.ohmstead.curves.study.SupplyModel.WarmingMeasure;

/**
 * Where readings lie: how many supply voltages and loads they differ by, and how the amplifier warmed up.
 *
 * @param points the readings
 * @param data the same as arrays
 * @param voltages the different supply voltages, rising; such as lie closer than 0.1 V count as one
 * @param loads the different loads per channel, rising; such as differ by less than 5 % count as one
 * @param conditions how many different pairs of voltage and load there are
 * @param warming what tells the progress of warming up, when something does
 * @param coldAt where the progress is 0
 */
record Terrain(
        List<StudyPoint> points,
        StageData data,
        List<Double> voltages,
        List<Double> loads,
        int conditions,
        Optional<WarmingMeasure> warming,
        double coldAt) {
    /** Loads that differ by less than this ratio count as one (a choice of this program). */
    static final double SAME_LOAD_RATIO = 1.05;

    /** Case temperatures that span less than this say nothing about a droop (a choice of this program). */
    private static final double SMALLEST_SPAN_KELVIN = 3;

    Terrain {
        points = List.copyOf(points);
        voltages = List.copyOf(voltages);
        loads = List.copyOf(loads);
    }

    static Terrain of(List<StudyPoint> points) {
        int size = points.size();
        double[] volts = new double[size];
        double[] ohms = new double[size];
        double[] channels = new double[size];
        double[] watts = new double[size];
        double[] uncertainties = new double[size];
        for (int i = 0; i < size; i++) {
            StudyPoint point = points.get(i);
            volts[i] = point.supplyVolts();
            ohms[i] = point.channelOhms();
            channels[i] = point.channels();
            watts[i] = point.powerWatts();
            uncertainties[i] = point.standardUncertaintyWatts();
        }
        double[] voltages = clusters(volts, PowerCurveFit.SMALLEST_SPAN_VOLTS, 1);
        double[] loads = clusters(ohms, 0, SAME_LOAD_RATIO);
        Optional<WarmingMeasure> warming = warming(points);
        double[] progress = new double[size];
        double coldAt = 0;
        if (warming.isPresent()) {
            Arrays.setAll(progress, i -> progress(points.get(i), warming.get()));
            double lowest = Arrays.stream(progress).min().orElse(0);
            coldAt = lowest;
            Arrays.setAll(progress, i -> progress(points.get(i), warming.get()) - lowest);
        }
        StageData data = new StageData(volts, ohms, channels, watts, uncertainties, progress);
        return new Terrain(
                points,
                data,
                Arrays.stream(voltages).boxed().toList(),
                Arrays.stream(loads).boxed().toList(),
                pairs(voltages, loads, volts, ohms),
                warming,
                coldAt);
    }

    boolean severalLoads() {
        return loads.size() > 1;
    }

    boolean severalVoltages() {
        return voltages.size() > 1;
    }

    double lowestOhms() {
        return lowest(data.channelOhms());
    }

    double highestOhms() {
        return highest(data.channelOhms());
    }

    double lowestVolts() {
        return lowest(data.supplyVolts());
    }

    double highestVolts() {
        return highest(data.supplyVolts());
    }

    double middleVolts() {
        return (lowestVolts() + highestVolts()) / 2;
    }

    double mostProgress() {
        return highest(data.progress());
    }

    private static double lowest(double[] values) {
        double lowest = values[0];
        for (double value : values) {
            lowest = Math.min(lowest, value);
        }
        return lowest;
    }

    private static double highest(double[] values) {
        double highest = values[0];
        for (double value : values) {
            highest = Math.max(highest, value);
        }
        return highest;
    }

    private static double progress(StudyPoint point, WarmingMeasure measure) {
        return measure == WarmingMeasure.CASE_CELSIUS
                ? point.caseCelsius().orElseThrow()
                : point.runIndex().orElseThrow();
    }

    private static Optional<WarmingMeasure> warming(List<StudyPoint> points) {
        if (!points.isEmpty()
                && points.stream().allMatch(point -> point.caseCelsius().isPresent())) {
            double lowest = points.stream()
                    .mapToDouble(point -> point.caseCelsius().orElseThrow())
                    .min()
                    .orElseThrow();
            double highest = points.stream()
                    .mapToDouble(point -> point.caseCelsius().orElseThrow())
                    .max()
                    .orElseThrow();
            if (highest - lowest >= SMALLEST_SPAN_KELVIN) {
                return Optional.of(WarmingMeasure.CASE_CELSIUS);
            }
        }
        boolean counted = points.stream().allMatch(point -> point.runIndex().isPresent());
        boolean differ = counted
                && points.stream()
                                .map(point -> point.runIndex().orElseThrow())
                                .distinct()
                                .count()
                        > 1;
        return differ ? Optional.of(WarmingMeasure.RUN_INDEX) : Optional.empty();
    }

    private static double[] clusters(double[] values, double apart, double ratio) {
        double[] firsts = values.clone();
        Arrays.sort(firsts);
        int count = 0;
        for (double value : firsts) {
            if (count == 0 || value >= firsts[count - 1] * ratio + apart) {
                firsts[count] = value;
                count++;
            }
        }
        return Arrays.copyOf(firsts, count);
    }

    private static int pairs(double[] voltages, double[] loads, double[] volts, double[] ohms) {
        boolean[] seen = new boolean[voltages.length * loads.length];
        int count = 0;
        for (int i = 0; i < volts.length; i++) {
            int pair = place(voltages, volts[i]) * loads.length + place(loads, ohms[i]);
            count += seen[pair] ? 0 : 1;
            seen[pair] = true;
        }
        return count;
    }

    private static int place(double[] firsts, double value) {
        int found = Arrays.binarySearch(firsts, value);
        return found >= 0 ? found : -found - 2;
    }
}
