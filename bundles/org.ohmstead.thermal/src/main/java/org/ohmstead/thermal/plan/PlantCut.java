// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Takes out of a {@link Plant} what cannot matter to a schedule, so that a search has less to reckon: points without a
 * limit, points that no order could bring to it, points that are always further from theirs than another one, and modes
 * that are always in proportion.
 */
final class PlantCut {
    private static final double SAME = 1e-12;

    private final Plant plant;
    /** For each mode the one that stands for it, and how many times as warm as that it is. */
    private final int[] standIn;

    private final double[] ratio;

    private PlantCut(Plant plant) {
        this.plant = plant;
        standIn = new int[plant.modes()];
        ratio = new double[plant.modes()];
    }

    static Plant of(Plant plant) {
        PlantCut cut = new PlantCut(plant);
        cut.findStandIns();
        return cut.build();
    }

    private void findStandIns() {
        for (int mode = 0; mode < standIn.length; mode++) {
            standIn[mode] = mode;
            ratio[mode] = 1;
            double[] course = course(mode);
            for (int other = 0; other < mode; other++) {
                if (standIn[other] == other && plant.tauSeconds[other] == plant.tauSeconds[mode]) {
                    double times = proportion(course, course(other));
                    if (times > 0) {
                        standIn[mode] = other;
                        ratio[mode] = times;
                        break;
                    }
                }
            }
        }
    }

    /** Everything that a mode's course depends on. */
    private double[] course(int mode) {
        double[] course = new double[plant.jobs + 2];
        for (int job = 0; job < plant.jobs; job++) {
            course[job] = plant.target[job][mode];
        }
        course[plant.jobs] = plant.idleTarget[mode];
        course[plant.jobs + 1] = plant.start[mode];
        return course;
    }

    /** Returns how many times one is the other; 0 when they are not in proportion. */
    private static double proportion(double[] one, double[] other) {
        double top = 0;
        double bottom = 0;
        for (int i = 0; i < one.length; i++) {
            if (Math.abs(other[i]) > Math.abs(bottom)) {
                bottom = other[i];
                top = one[i];
            }
        }
        if (bottom == 0) {
            return Arrays.stream(one).allMatch(value -> value == 0) ? 1 : 0;
        }
        double times = top / bottom;
        for (int i = 0; i < one.length; i++) {
            if (Math.abs(one[i] - times * other[i]) > SAME * Math.abs(top)) {
                return 0;
            }
        }
        return times;
    }

    private Plant build() {
        List<double[]> spread = new ArrayList<>();
        for (int point = 0; point < plant.points(); point++) {
            double[] full = new double[plant.modes()];
            for (int i = 0; i < plant.weights[point].length; i++) {
                int mode = plant.pointModes[point][i];
                full[standIn[mode]] += plant.weights[point][i] * ratio[mode];
            }
            spread.add(full);
        }
        List<Integer> kept = new ArrayList<>();
        for (int point = 0; point < plant.points(); point++) {
            int candidate = point;
            if (mayBind(point, spread.get(point))
                    && kept.stream().noneMatch(other -> beats(other, candidate, spread))) {
                kept.removeIf(other -> beats(candidate, other, spread));
                kept.add(point);
            }
        }
        return assemble(kept, spread);
    }

    private boolean mayBind(int point, double[] weights) {
        if (Double.isInfinite(plant.limit[point])) {
            return false;
        }
        double most = 0;
        for (int mode = 0; mode < weights.length; mode++) {
            if (weights[mode] != 0) {
                most += weights[mode] * (weights[mode] > 0 ? plant.highest(mode) : plant.lowest(mode));
            }
        }
        double direct = plant.idleDirect[point];
        for (double[] job : plant.direct) {
            direct = Math.max(direct, job[point]);
        }
        return direct + most > plant.limit[point];
    }

    /** Returns whether one point breaks its limit whenever another does. */
    private boolean beats(int one, int other, List<double[]> spread) {
        double times = proportion(spread.get(other), spread.get(one));
        if (times <= 0) {
            return false;
        }
        if (room(other, plant.idleDirect) < times * room(one, plant.idleDirect)) {
            return false;
        }
        for (double[] job : plant.direct) {
            if (room(other, job) < times * room(one, job)) {
                return false;
            }
        }
        return true;
    }

    private double room(int point, double[] direct) {
        return plant.limit[point] - direct[point];
    }

    private Plant assemble(List<Integer> kept, List<double[]> spread) {
        int[] newNumber = new int[plant.modes()];
        List<Integer> modes = new ArrayList<>();
        for (int mode = 0; mode < newNumber.length; mode++) {
            int candidate = mode;
            if (kept.stream().anyMatch(point -> spread.get(point)[candidate] != 0)) {
                newNumber[mode] = modes.size();
                modes.add(mode);
            }
        }
        int[] chosen = modes.stream().mapToInt(Integer::intValue).toArray();
        int[] points = kept.stream().mapToInt(Integer::intValue).toArray();
        int[][] pointModes = new int[points.length][];
        double[][] weights = new double[points.length][];
        for (int i = 0; i < points.length; i++) {
            double[] full = spread.get(points[i]);
            int[] used = Arrays.stream(chosen).filter(mode -> full[mode] != 0).toArray();
            pointModes[i] = Arrays.stream(used).map(mode -> newNumber[mode]).toArray();
            weights[i] = Arrays.stream(used).mapToDouble(mode -> full[mode]).toArray();
        }
        return new Plant(
                plant.onSeconds,
                new Plant.Modes(
                        pick(plant.tauSeconds, chosen),
                        Arrays.stream(plant.target)
                                .map(row -> pick(row, chosen))
                                .toArray(double[][]::new),
                        pick(plant.idleTarget, chosen),
                        pick(plant.start, chosen)),
                new Plant.Points(
                        pick(plant.pointNumber, points),
                        pointModes,
                        weights,
                        Arrays.stream(plant.direct)
                                .map(row -> pick(row, points))
                                .toArray(double[][]::new),
                        pick(plant.idleDirect, points),
                        pick(plant.limit, points)));
    }

    private static double[] pick(double[] from, int[] which) {
        return Arrays.stream(which).mapToDouble(i -> from[i]).toArray();
    }

    private static int[] pick(int[] from, int[] which) {
        return Arrays.stream(which).map(i -> from[i]).toArray();
    }
}
