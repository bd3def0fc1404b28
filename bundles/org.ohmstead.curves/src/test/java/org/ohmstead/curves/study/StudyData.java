// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import org.ohmstead.model.Mode;

/** Readings for the tests. */
final class StudyData {
    static final double[] SUPPLY_VOLTS = {11, 12, 12.6, 13.8, 14.4};

    // Closed form with g = 2.8, V_s = 3, R_o = 0.1: P = R (2.8 V - 3)²/(2 (R + 0.1)²), to the digits printed.
    static final double[] EIGHT_OHM = {47.117208, 57.08642, 63.526804, 77.44, 84.912812};
    static final double[] FOUR_OHM = {91.95003, 111.405116, 123.973635, 151.125473, 165.708792};
    static final double[] TWO_OHM = {175.247166, 212.326531, 236.280816, 288.029388, 315.823673};

    private StudyData() {}

    static List<StudyPoint> exact(double loadOhms, double[] watts) {
        List<StudyPoint> points = new ArrayList<>();
        for (int i = 0; i < watts.length; i++) {
            points.add(StudyPoint.of(Mode.STEREO, loadOhms, SUPPLY_VOLTS[i], watts[i], 0.005 * watts[i]));
        }
        return points;
    }

    static List<StudyPoint> exact() {
        List<StudyPoint> points = new ArrayList<>(exact(8, EIGHT_OHM));
        points.addAll(exact(4, FOUR_OHM));
        points.addAll(exact(2, TWO_OHM));
        return points;
    }

    /** Sixty readings: three stereo loads and a bridged one at fifteen voltages, with scatter from a formula. */
    static List<StudyPoint> sixty() {
        List<StudyPoint> points = new ArrayList<>();
        double[] loads = {8, 4, 2, 4};
        for (int k = 0; k < 60; k++) {
            double volts = 11 + 0.25 * (k / 4);
            boolean bridged = k % 4 == 3;
            double ohms = bridged ? 2 : loads[k % 4];
            double peak = (2.8 * volts - 3) * ohms / (ohms + 0.1);
            double exact = (bridged ? 2 : 1) * peak * peak / (2 * ohms);
            double watts = exact * (1 + 0.006 * Math.sin(12.9898 * k + 0.5));
            points.add(StudyPoint.of(bridged ? Mode.BRIDGED : Mode.STEREO, loads[k % 4], volts, watts, 0.005 * exact));
        }
        return points;
    }

    /** Readings with normal scatter of a relative standard deviation, from peak volts by supply volts and ohms. */
    static List<StudyPoint> noisy(
            double[] volts,
            double[] ohms,
            double relative,
            Random random,
            ToDoubleBiFunction<Double, Double> peakVolts) {
        List<StudyPoint> points = new ArrayList<>();
        for (double r : ohms) {
            for (double v : volts) {
                double peak = peakVolts.applyAsDouble(v, r);
                double watts = peak * peak / (2 * r);
                double read = watts * (1 + relative * random.nextGaussian());
                points.add(StudyPoint.of(Mode.STEREO, r, v, read, relative * watts));
            }
        }
        return points;
    }

    static double unregulated(double volts, double ohms) {
        return (2.8 * volts - 3) * ohms / (ohms + 0.1);
    }

    /** The lines that the Python script beside the tests reads. */
    static String lines(List<StudyPoint> points) {
        StringBuilder lines = new StringBuilder();
        for (StudyPoint point : points) {
            lines.append(point.supplyVolts())
                    .append(' ')
                    .append(point.channelOhms())
                    .append(' ')
                    .append(point.channels())
                    .append(' ')
                    .append(point.powerWatts())
                    .append(' ')
                    .append(point.standardUncertaintyWatts())
                    .append('\n');
        }
        return lines.toString();
    }
}
