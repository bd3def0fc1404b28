// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The preferred values of resistors (IEC 60063). The series up to {@link #E24} are as listed there, as some of their values do not follow
 * the formula; those from {@link #E48} on are 10^(i/n) rounded to three digits, except 9.20 of {@link #E192}.
 */
public enum PreferredValues {
    /** 3 values in a decade. */
    E3(3),
    /** 6 values in a decade. */
    E6(6),
    /** 12 values in a decade. */
    E12(12),
    /** 24 values in a decade. */
    E24(24),
    /** 48 values in a decade. */
    E48(48),
    /** 96 values in a decade. */
    E96(96),
    /** 192 values in a decade. */
    E192(192);

    private static final int LOWEST_EXPONENT = -12;
    private static final int HIGHEST_EXPONENT = 14;

    private final List<BigDecimal> mantissas;

    PreferredValues(int count) {
        List<BigDecimal> values = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            values.add(count <= 24 ? listed(i * (24 / count)) : computed(i, count));
        }
        mantissas = List.copyOf(values);
    }

    private static BigDecimal listed(int index) {
        int[] tenths = {10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91};
        return BigDecimal.valueOf(tenths[index], 1);
    }

    private static BigDecimal computed(int index, int count) {
        BigDecimal value =
                BigDecimal.valueOf(Math.pow(10, index / (double) count)).setScale(2, RoundingMode.HALF_UP);
        BigDecimal exception = new BigDecimal("9.19");
        return value.equals(exception) ? new BigDecimal("9.20") : value;
    }

    /** Returns the values from 1 up to, but not including, 10, rising. */
    public List<Double> decade() {
        return mantissas.stream().map(BigDecimal::doubleValue).toList();
    }

    /**
     * Returns the value of the series that lies nearest in ohms; of two equally near the lower.
     *
     * @param ohms a resistance in ohms, 1e-12 to 1e14
     */
    public double nearest(double ohms) {
        Checks.within(ohms, 1e-12, 1e14, "ohms");
        int exponent = (int) Math.floor(Math.log10(ohms));
        double best = Double.NaN;
        for (int decade = exponent - 1; decade <= exponent + 1; decade++) {
            for (BigDecimal mantissa : mantissas) {
                double value = value(mantissa, decade);
                if (!(Math.abs(value - ohms) >= Math.abs(best - ohms))) {
                    best = value;
                }
            }
        }
        return best;
    }

    /** Returns how far the nearest value lies from a resistance in ohms, relative to it; below 0 when the value is lower. */
    public double deviationRatio(double ohms) {
        return nearest(ohms) / ohms - 1;
    }

    /** Returns whether a resistance in ohms, 1e-12 to 1e14, is a value of the series. */
    public boolean contains(double ohms) {
        return Math.abs(deviationRatio(ohms)) < 1e-9;
    }

    /**
     * Returns the values of the series from one resistance to another, both included, rising.
     *
     * @param lowestOhms in ohms, 1e-12 to 1e14
     * @param highestOhms in ohms, from {@code lowestOhms} to 1e14
     */
    public List<Double> between(double lowestOhms, double highestOhms) {
        Checks.within(lowestOhms, 1e-12, 1e14, "lowestOhms");
        Checks.within(highestOhms, lowestOhms, 1e14, "highestOhms");
        List<Double> values = new ArrayList<>();
        for (int decade = LOWEST_EXPONENT; decade <= HIGHEST_EXPONENT; decade++) {
            for (BigDecimal mantissa : mantissas) {
                double value = value(mantissa, decade);
                if (value >= lowestOhms && value <= highestOhms) {
                    values.add(value);
                }
            }
        }
        return List.copyOf(values);
    }

    private static double value(BigDecimal mantissa, int exponent) {
        return mantissa.scaleByPowerOfTen(exponent).doubleValue();
    }
}
