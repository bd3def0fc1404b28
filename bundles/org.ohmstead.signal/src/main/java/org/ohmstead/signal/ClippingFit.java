// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Tells whether the harmonics of a tone are those of a sine with cut-off tops, and how deep the cut is. Each side of
 * the cut wave is the sine minus the tip above its limit, and a tip has a Fourier series in closed form. The drive of
 * both sides is fitted to the harmonics that the band lets through, so a band-limited record (rounded corners, ripple on
 * the plateau) is compared with an equally band-limited model. Beside it a crossover step of free size is fitted, and
 * the second harmonic, which a slightly unequal output stage adds, is left out. A wave counts as clipped only if the
 * cut explains most of the rest: a gentle cubic or another smooth curve, a triangle and crossover distortion alone have
 * other proportions or other signs of their harmonics. A smooth curve that is driven until its tops are as good as flat
 * counts as clipped.
 */
final class ClippingFit {
    private static final int MAX_ORDERS = 40;
    private static final int GRID = 64;
    private static final double MAX_DRIVE_DB = 26;
    private static final double LEAST_EXPLAINED_SHARE = 0.85;
    private static final double LEAST_DRIVE_DB = 0.02;
    private static final double LEAST_CLIPPING_SHARE = 0.05;
    private static final double MOST_DRIVE_DB = 40;
    /** With fewer harmonics there are as many unknowns as numbers. */
    private static final int LEAST_ORDERS_FOR_STEP = 9;

    private static final double LEAST_SIGNAL_TO_NOISE = 9;

    private static final double[][] GRID_TIPS = gridTips();
    private static final AtomicReferenceArray<double[][]> ACROSS = new AtomicReferenceArray<>(MAX_ORDERS + 1);

    private final double[] inPhase;
    private final double quadraturePower;
    private final int orders;
    private final double measuredSquare;
    private final double stepSquare;
    private final double stepMeasured;

    private ClippingFit(double[] inPhase, double quadraturePower, int orders) {
        this.inPhase = inPhase;
        this.quadraturePower = quadraturePower;
        this.orders = orders;
        double ofMeasured = inPhase[1] * inPhase[1];
        double ofStep = step(1) * step(1);
        double ofBoth = step(1) * inPhase[1];
        for (int n = 3; n <= orders; n++) {
            ofMeasured += inPhase[n] * inPhase[n];
            ofStep += step(n) * step(n);
            ofBoth += step(n) * inPhase[n];
        }
        measuredSquare = ofMeasured;
        stepSquare = ofStep;
        stepMeasured = ofBoth;
    }

    /**
     * Judges a fitted tone.
     *
     * @param fit the harmonics
     * @param highestOrder highest order inside the band
     * @param factorVariance variance that noise gives to each fitted factor, volts squared
     */
    static Clipping of(HarmonicFit fit, int highestOrder, double factorVariance) {
        int orders = Math.min(Math.min(fit.orders(), highestOrder), MAX_ORDERS);
        if (orders < 5) {
            return Clipping.NONE;
        }
        double[] inPhase = new double[orders + 1];
        double power = 0;
        double inPhasePower = 0;
        double quadraturePower = 0;
        for (int n = 1; n <= orders; n++) {
            // With the origin at the positive peak a sine phase p of order n becomes p + (n - 1) pi / 2.
            double phase = fit.sinePhaseRadians(n) + (n - 1) * Math.PI / 2;
            inPhase[n] = fit.amplitudeVolts(n) * Math.cos(phase);
            if (n > 1) {
                power += fit.amplitudeVolts(n) * fit.amplitudeVolts(n);
                inPhasePower += inPhase[n] * inPhase[n];
                quadraturePower += n > 2 ? Math.pow(fit.amplitudeVolts(n) * Math.sin(phase), 2) : 0;
            }
        }
        if (inPhasePower < 0.5 * power || inPhasePower < LEAST_SIGNAL_TO_NOISE * orders * factorVariance) {
            return Clipping.NONE;
        }
        return new ClippingFit(inPhase, quadraturePower, orders).search(inPhasePower, orders * factorVariance);
    }

    private Clipping search(double harmonicPower, double noisePower) {
        double[] drivesDb = coarseSearch();
        double best = fineSearch(drivesDb);
        double[] uncut = tip(0, orders);
        double withoutClipping = cost(uncut, uncut);
        // What a cut does not do at all, a part out of phase, counts against it.
        double unexplained = best + quadraturePower - 2 * noisePower;
        double explained = 1 - Math.max(0, unexplained) / (withoutClipping + quadraturePower);
        if (explained < LEAST_EXPLAINED_SHARE
                || withoutClipping < LEAST_CLIPPING_SHARE * harmonicPower
                || withoutClipping < LEAST_SIGNAL_TO_NOISE * noisePower
                || Math.max(drivesDb[0], drivesDb[1]) < LEAST_DRIVE_DB) {
            return Clipping.NONE;
        }
        return result(Math.min(drivesDb[0], MOST_DRIVE_DB), Math.min(drivesDb[1], MOST_DRIVE_DB));
    }

    /** The drive of the positive and the negative side that fits best on a grid. */
    private double[] coarseSearch() {
        GridSide[] sides = new GridSide[GRID + 1];
        for (int i = 0; i <= GRID; i++) {
            sides[i] = new GridSide(GRID_TIPS[i]);
        }
        double[][] across = across(orders);
        double[] drivesDb = new double[2];
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            for (int j = 0; j <= GRID; j++) {
                double cost = sides[i].cost(sides[j], across[i][j]);
                if (cost < best) {
                    best = cost;
                    drivesDb[0] = gridDriveDb(i);
                    drivesDb[1] = gridDriveDb(j);
                }
            }
        }
        return drivesDb;
    }

    /** Returns the sums of products of each two tips of the grid, which are the same for every wave with as many orders. */
    private static double[][] across(int orders) {
        double[][] known = ACROSS.get(orders);
        if (known == null) {
            known = new double[GRID + 1][GRID + 1];
            for (int i = 0; i <= GRID; i++) {
                for (int j = 0; j <= GRID; j++) {
                    known[i][j] = across(GRID_TIPS[i], GRID_TIPS[j], orders);
                }
            }
            ACROSS.set(orders, known);
        }
        return known;
    }

    /** Sum of the products of two tips on different sides, so that the even orders have the other sign; the second is left out. */
    private static double across(double[] positive, double[] negative, int orders) {
        double sum = positive[1] * negative[1];
        for (int n = 3; n <= orders; n++) {
            sum += n % 2 == 0 ? -positive[n] * negative[n] : positive[n] * negative[n];
        }
        return sum;
    }

    /** Improves both drives in place by ever smaller steps and returns the cost that is left. */
    private double fineSearch(double[] drivesDb) {
        double best = cost(tip(drivesDb[0], orders), tip(drivesDb[1], orders));
        double reach = 0.5;
        double[][] positives = new double[3][];
        double[][] negatives = new double[3][];
        while (reach > 1e-6) {
            double positive = drivesDb[0];
            double negative = drivesDb[1];
            for (int i = 0; i < 3; i++) {
                positives[i] = tip(Math.max(0, positive + (i - 1) * reach), orders);
                negatives[i] = tip(Math.max(0, negative + (i - 1) * reach), orders);
            }
            boolean improved = false;
            for (int direction = 0; direction < 9; direction++) {
                double cost = cost(positives[direction / 3], negatives[direction % 3]);
                if (cost < best) {
                    best = cost;
                    drivesDb[0] = Math.max(0, positive + (direction / 3 - 1) * reach);
                    drivesDb[1] = Math.max(0, negative + (direction % 3 - 1) * reach);
                    improved = true;
                }
            }
            reach = improved ? reach : reach / 2;
        }
        return best;
    }

    static Clipping result(double positiveDriveDb, double negativeDriveDb) {
        double flat = Math.acos(ratio(positiveDriveDb)) / Math.PI + Math.acos(ratio(negativeDriveDb)) / Math.PI;
        return new Clipping(
                true, Math.max(positiveDriveDb, negativeDriveDb), Math.min(1, flat), positiveDriveDb, negativeDriveDb);
    }

    private static double gridDriveDb(int index) {
        double position = (double) index / GRID;
        return MAX_DRIVE_DB * position * position;
    }

    private static double ratio(double driveDb) {
        return Math.pow(10, -driveDb / 20);
    }

    /**
     * What a tip of the grid adds to the sums of products: all pairs of the grid are tried. The drives of the grid are low
     * enough for the sums to keep their digits.
     */
    private final class GridSide {
        /** Orders 1 and 3 up; the second is left out. */
        private final double[] tip;

        private final double square;
        private final double withStep;
        private final double withOdd;
        private final double withEven;

        GridSide(double[] tip) {
            this.tip = tip;
            double ofSquare = tip[1] * tip[1];
            double ofStep = tip[1] * step(1);
            double ofOdd = tip[1] * inPhase[1];
            double ofEven = 0;
            for (int n = 3; n <= orders; n++) {
                ofSquare += tip[n] * tip[n];
                if (n % 2 == 0) {
                    ofEven += tip[n] * inPhase[n];
                } else {
                    ofStep += tip[n] * step(n);
                    ofOdd += tip[n] * inPhase[n];
                }
            }
            square = ofSquare;
            withStep = ofStep;
            withOdd = ofOdd;
            withEven = ofEven;
        }

        /**
         * The cost with this tip on the positive side and another on the negative side.
         *
         * @param across the sum of the products of the two
         */
        double cost(GridSide negative, double across) {
            double modelSquare = 1 - 2 * (tip[1] + negative.tip[1]) + square + negative.square + 2 * across;
            double modelStep = step(1) - withStep - negative.withStep;
            double modelMeasured = inPhase[1] - withOdd - negative.withOdd - withEven + negative.withEven;
            return ClippingFit.this.cost(modelSquare, modelStep, modelMeasured);
        }
    }

    /** The cost of a sine of amplitude one with these tips taken off. */
    private double cost(double[] positiveTip, double[] negativeTip) {
        double modelSquare = 0;
        double modelStep = 0;
        double modelMeasured = 0;
        for (int n = 1; n <= orders; n += n == 1 ? 2 : 1) {
            double model = (n == 1 ? 1 : 0) - positiveTip[n] + (n % 2 == 0 ? negativeTip[n] : -negativeTip[n]);
            modelSquare += model * model;
            modelStep += model * step(n);
            modelMeasured += model * inPhase[n];
        }
        return cost(modelSquare, modelStep, modelMeasured);
    }

    /**
     * Smallest sum of squared differences to the measured harmonics, over the free amplitude of the uncut sine and of
     * the crossover step, from the sums of the model's products with itself, the step and the measured harmonics.
     */
    private double cost(double modelSquare, double modelStep, double modelMeasured) {
        double determinant = modelSquare * stepSquare - modelStep * modelStep;
        double stepFactor = determinant > 1e-12 * modelSquare * stepSquare
                ? (modelSquare * stepMeasured - modelStep * modelMeasured) / determinant
                : 0;
        // Crossover takes a step out of the wave; a step added would be no crossover.
        stepFactor = orders < LEAST_ORDERS_FOR_STEP ? 0 : Math.min(0, stepFactor);
        double sineFactor = modelSquare > 0 ? (modelMeasured - stepFactor * modelStep) / modelSquare : 0;
        return measuredSquare
                - 2 * (sineFactor * modelMeasured + stepFactor * stepMeasured)
                + sineFactor * sineFactor * modelSquare
                + 2 * sineFactor * stepFactor * modelStep
                + stepFactor * stepFactor * stepSquare;
    }

    /** Cosine series of a step between -1 and 1: 4 / (pi n) with alternating signs, odd orders only. */
    private static double step(int order) {
        if (order % 2 == 0) {
            return 0;
        }
        return (order % 4 == 1 ? 4 : -4) / (Math.PI * order);
    }

    /**
     * Cosine series of the part of cos(x) above the level cos(a), for n = 1 up: (a - sin a cos a) / pi, then
     * 2 (sin(n a) cos a - n cos(n a) sin a) / (pi n (n^2 - 1)).
     */
    private static double[] tip(double driveDb, int orders) {
        double level = ratio(driveDb);
        double angle = Math.acos(level);
        double sine = Math.sin(angle);
        double[] series = new double[orders + 1];
        series[1] = (angle - sine * level) / Math.PI;
        // Cosine and sine of n times the angle, from n to n + 1 by a rotation.
        double turnedCosine = level;
        double turnedSine = sine;
        for (int n = 2; n <= orders; n++) {
            double next = turnedCosine * level - turnedSine * sine;
            turnedSine = turnedSine * level + turnedCosine * sine;
            turnedCosine = next;
            double wave = turnedSine * level - n * turnedCosine * sine;
            series[n] = 2 * wave / (Math.PI * n * ((double) n * n - 1));
        }
        return series;
    }

    private static double[][] gridTips() {
        double[][] tips = new double[GRID + 1][];
        for (int i = 0; i <= GRID; i++) {
            tips[i] = tip(gridDriveDb(i), MAX_ORDERS);
        }
        return tips;
    }
}
