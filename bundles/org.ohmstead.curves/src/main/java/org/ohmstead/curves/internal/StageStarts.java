// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.function.IntPredicate;

/**
 * First guesses for a search. The model turned round is linear in its values: y = g V - V_s - R_o y/r, where y is the
 * peak voltage, so one linear fit gives them.
 */
public final class StageStarts {
    private final StageData data;
    private final int[] straight;

    /**
     * Prepares guesses.
     *
     * @param data the readings
     * @param straight which of the slots gain, saturation and output are sought; at least one
     */
    public StageStarts(StageData data, int[] straight) {
        this.data = data;
        this.straight = straight.clone();
    }

    /** Returns a guess through some of the readings; without a source resistance if they do not determine one. */
    public double[] through(IntPredicate chosen) {
        double[] peaks = data.peakVolts();
        for (int size = straight.length; size > 1; size--) {
            double[] slots = linear(peaks, chosen, size);
            if (slots.length > 0) {
                return slots;
            }
        }
        return single(peaks, chosen);
    }

    private double[] linear(double[] peaks, IntPredicate chosen, int size) {
        double[][] normal = new double[size][size];
        double[] right = new double[size];
        double[] row = new double[size];
        double[] channels = data.channels();
        double[] ohms = data.channelOhms();
        double[] uncertainties = data.standardUncertaintyWatts();
        for (int k = 0; k < peaks.length; k++) {
            if (!chosen.test(k)) {
                continue;
            }
            // 1/u(y) of the peak voltage, from u(P) = n y u(y)/r.
            double inverse = channels[k] * peaks[k] / (ohms[k] * uncertainties[k]);
            double weight = inverse * inverse;
            for (int i = 0; i < size; i++) {
                row[i] = column(straight[i], k, peaks[k]);
                right[i] += weight * row[i] * peaks[k];
                for (int j = 0; j <= i; j++) {
                    normal[i][j] += weight * row[i] * row[j];
                }
            }
        }
        double[] found = new double[size];
        if (!SmallSymmetric.solve(normal, right, size, 0, new double[size][size], found)) {
            return new double[0];
        }
        double[] slots = StageCurve.neutral();
        for (int i = 0; i < size; i++) {
            slots[straight[i]] = found[i];
        }
        return slots;
    }

    private double[] single(double[] peaks, IntPredicate chosen) {
        double top = 0;
        double bottom = 0;
        for (int k = 0; k < peaks.length; k++) {
            if (chosen.test(k)) {
                double column = column(straight[0], k, peaks[k]);
                top += column * peaks[k];
                bottom += column * column;
            }
        }
        double[] slots = StageCurve.neutral();
        slots[straight[0]] = bottom > 0 ? top / bottom : 1;
        return slots;
    }

    private double column(int slot, int reading, double peakVolts) {
        return switch (slot) {
            case StageCurve.GAIN -> data.supplyVolts()[reading];
            case StageCurve.SATURATION -> -1;
            default -> -peakVolts / data.channelOhms()[reading];
        };
    }
}
