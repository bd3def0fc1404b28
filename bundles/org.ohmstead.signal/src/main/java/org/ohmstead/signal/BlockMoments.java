// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;

/**
 * Weighted samples, summed up in blocks about a frequency: of each block the sums with the cosine and sine of that frequency, and with the
 * first and second power of the instant besides. From these come the sums of the record at any frequency nearby, so a search for the
 * frequency goes through the samples once.
 */
final class BlockMoments {
    private static final int BLOCK = 64;
    private static final int HALF = BLOCK / 2;
    private static final double CENTRE = 0.5 * (BLOCK - 1);
    private static final int MOMENTS = 6;
    /** Angle at the edge of a block up to which the second power is enough: what is left is its cube over six. */
    private static final double MOST_ANGLE = 2e-4;
    /** Blocks whose angles are worked out by turning on from one of them. */
    private static final int RUN = 32;

    private final int size;
    private final double radians;
    private final double[] moments;

    /**
     * Goes through the samples.
     *
     * @param products the samples, weighted
     * @param radians the frequency in radians per sample
     */
    BlockMoments(double[] products, double radians) {
        size = products.length;
        this.radians = radians;
        int blocks = (size + BLOCK - 1) / BLOCK;
        moments = new double[MOMENTS * blocks];
        double[] cosines = new double[HALF];
        double[] sines = new double[HALF];
        for (int k = 0; k < HALF; k++) {
            cosines[k] = Math.cos(radians * (k + 0.5));
            sines[k] = Math.sin(radians * (k + 0.5));
        }
        int whole = size / BLOCK;
        for (int b = 0; b < whole; b++) {
            sum(products, b * BLOCK, b, cosines, sines);
        }
        if (whole < blocks) {
            double[] last = Arrays.copyOfRange(products, whole * BLOCK, (whole + 1) * BLOCK);
            sum(last, 0, whole, cosines, sines);
        }
    }

    /** Sums up a block: samples at the same distance from its middle have the same cosine, and sines of opposite sign. */
    private void sum(double[] products, int start, int block, double[] cosines, double[] sines) {
        double cosine = 0;
        double sine = 0;
        double cosineFirst = 0;
        double sineFirst = 0;
        double cosineSecond = 0;
        double sineSecond = 0;
        int middle = start + HALF;
        for (int k = 0; k < HALF; k++) {
            double after = products[middle + k];
            double before = products[middle - 1 - k];
            double time = k + 0.5;
            double evenCosine = (after + before) * cosines[k];
            double oddSine = (after - before) * sines[k];
            double evenSine = (after + before) * sines[k] * time;
            double oddCosine = (after - before) * cosines[k] * time;
            cosine += evenCosine;
            sine += oddSine;
            cosineFirst += oddCosine;
            sineFirst += evenSine;
            cosineSecond += evenCosine * (time * time);
            sineSecond += oddSine * (time * time);
        }
        int at = MOMENTS * block;
        moments[at] = cosine;
        moments[at + 1] = sine;
        moments[at + 2] = cosineFirst;
        moments[at + 3] = sineFirst;
        moments[at + 4] = cosineSecond;
        moments[at + 5] = sineSecond;
    }

    /** Whether a frequency is near enough. */
    boolean reaches(double otherRadians) {
        return Math.abs(otherRadians - radians) * CENTRE <= MOST_ANGLE;
    }

    /**
     * Returns the sums of the products with cosine and sine of a frequency, and of the products times their instants with both: four
     * numbers. Instants count from the middle of the record.
     */
    double[] sums(double otherRadians) {
        double[] sums = new double[4];
        double change = otherRadians - radians;
        double turnCosine = Math.cos(otherRadians * BLOCK);
        double turnSine = Math.sin(otherRadians * BLOCK);
        double cosine = 1;
        double sine = 0;
        for (int b = 0; b < moments.length / MOMENTS; b++) {
            double time = b * BLOCK + CENTRE - 0.5 * (size - 1);
            if (b % RUN == 0) {
                cosine = Math.cos(otherRadians * time);
                sine = Math.sin(otherRadians * time);
            }
            int at = MOMENTS * b;
            // cos((w + d) k) = cos(wk) - dk sin(wk) - (dk)^2 / 2 cos(wk), and so on.
            double c = moments[at] - change * (moments[at + 3] + 0.5 * change * moments[at + 4]);
            double s = moments[at + 1] + change * (moments[at + 2] - 0.5 * change * moments[at + 5]);
            double cFirst = moments[at + 2] - change * moments[at + 5];
            double sFirst = moments[at + 3] + change * moments[at + 4];
            double ofCosine = cosine * c - sine * s;
            double ofSine = sine * c + cosine * s;
            sums[0] += ofCosine;
            sums[1] += ofSine;
            sums[2] += time * ofCosine + cosine * cFirst - sine * sFirst;
            sums[3] += time * ofSine + sine * cFirst + cosine * sFirst;
            double next = cosine * turnCosine - sine * turnSine;
            sine = sine * turnCosine + cosine * turnSine;
            cosine = next;
        }
        return sums;
    }
}
