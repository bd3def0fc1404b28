// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Weighted samples, summed up in blocks about a frequency: of each block the sums with the cosine and sine of that frequency, and with the
 * first and second power of the instant besides. From these come the sums of the record at any frequency nearby, so a search for the
 * frequency goes through the samples once.
 */
final class BlockMoments {
    private static final int BLOCK = 64;
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
        double[] cosines = new double[BLOCK];
        double[] sines = new double[BLOCK];
        for (int k = 0; k < BLOCK; k++) {
            cosines[k] = Math.cos(radians * (k - CENTRE));
            sines[k] = Math.sin(radians * (k - CENTRE));
        }
        for (int b = 0; b < blocks; b++) {
            sum(products, b, cosines, sines);
        }
    }

    private void sum(double[] products, int block, double[] cosines, double[] sines) {
        int start = block * BLOCK;
        int count = Math.min(BLOCK, size - start);
        double cosine = 0;
        double sine = 0;
        double cosineFirst = 0;
        double sineFirst = 0;
        double cosineSecond = 0;
        double sineSecond = 0;
        for (int k = 0; k < count; k++) {
            double time = k - CENTRE;
            double c = products[start + k] * cosines[k];
            double s = products[start + k] * sines[k];
            cosine += c;
            sine += s;
            c *= time;
            s *= time;
            cosineFirst += c;
            sineFirst += s;
            cosineSecond += c * time;
            sineSecond += s * time;
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
