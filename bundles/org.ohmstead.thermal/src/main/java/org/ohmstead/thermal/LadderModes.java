// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * Turns a Cauer ladder into a Foster chain: the modes of (G - lambda C) v = 0 with the tridiagonal matrix G of conductances. The number of
 * modes slower than a rate is the number of negative pivots (Sylvester's law of inertia), so that each is found by halving an interval;
 * long decimal numbers keep the pivots right when the time constants lie many powers of ten apart.
 */
final class LadderModes {
    private static final MathContext DIGITS = new MathContext(100);
    private static final int INVERSE_ITERATIONS = 3;

    private final BigDecimal[] capacity;
    private final BigDecimal[] diagonal;
    /** Conductance from each body to the next; the last to the air. */
    private final BigDecimal[] conductance;

    private LadderModes(List<CauerStage> stages) {
        int count = stages.size();
        capacity = new BigDecimal[count];
        diagonal = new BigDecimal[count];
        conductance = new BigDecimal[count];
        for (int i = 0; i < count; i++) {
            capacity[i] = new BigDecimal(stages.get(i).joulesPerKelvin());
            conductance[i] = BigDecimal.ONE.divide(new BigDecimal(stages.get(i).kelvinPerWatt()), DIGITS);
            diagonal[i] = i == 0 ? conductance[i] : conductance[i].add(conductance[i - 1], DIGITS);
        }
    }

    static List<FosterStage> chain(List<CauerStage> stages) {
        LadderModes ladder = new LadderModes(stages);
        // The slowest rate is above one over the sum of all C times R to the air, the fastest below twice the greatest
        // G_ii/C_i.
        double slow = 0;
        double fast = 0;
        double toAir = 0;
        for (int i = stages.size() - 1; i >= 0; i--) {
            toAir += stages.get(i).kelvinPerWatt();
            slow += toAir * stages.get(i).joulesPerKelvin();
            fast = Math.max(
                    fast, ladder.diagonal[i].divide(ladder.capacity[i], DIGITS).doubleValue());
        }
        List<FosterStage> chain = new ArrayList<>();
        for (int mode = 0; mode < stages.size(); mode++) {
            double rate = ladder.rate(mode, 0.5 / slow, 4 * fast);
            chain.add(0, new FosterStage(ladder.kelvinPerWatt(rate), 1 / rate));
        }
        return chain;
    }

    /** Returns the rate with so many slower ones. */
    private double rate(int slower, double below, double above) {
        double low = below;
        double high = above;
        while (true) {
            double middle = high > 2 * low ? Math.sqrt(low) * Math.sqrt(high) : low + (high - low) / 2;
            if (middle <= low || middle >= high) {
                return high;
            }
            if (negativePivots(new BigDecimal(middle)) > slower) {
                high = middle;
            } else {
                low = middle;
            }
        }
    }

    private int negativePivots(BigDecimal rate) {
        int negative = 0;
        for (BigDecimal pivot : pivots(rate)) {
            if (pivot.signum() < 0) {
                negative++;
            }
        }
        return negative;
    }

    private BigDecimal[] pivots(BigDecimal rate) {
        BigDecimal[] pivots = new BigDecimal[capacity.length];
        for (int i = 0; i < pivots.length; i++) {
            BigDecimal pivot = diagonal[i].subtract(rate.multiply(capacity[i], DIGITS), DIGITS);
            if (i > 0) {
                BigDecimal square = conductance[i - 1].multiply(conductance[i - 1], DIGITS);
                pivot = pivot.subtract(square.divide(pivots[i - 1], DIGITS), DIGITS);
            }
            // A pivot of nothing counts as a tiny one; the next then has the other sign, and the count stays right.
            pivots[i] = pivot.signum() == 0 ? diagonal[i].movePointLeft(DIGITS.getPrecision()) : pivot;
        }
        return pivots;
    }

    /** Returns the resistance of the mode at the source: v_1 squared over rate and v'Cv, the vector by inverse iteration. */
    private double kelvinPerWatt(double rate) {
        BigDecimal[] pivots = pivots(new BigDecimal(rate));
        BigDecimal[] vector = new BigDecimal[capacity.length];
        // Bodies all alike would be the slowest mode, nearly, and hold next to nothing of the fast ones.
        for (int i = 0; i < vector.length; i++) {
            vector[i] = BigDecimal.ONE.divide(capacity[i].multiply(BigDecimal.valueOf(i + 1L)), DIGITS);
        }
        for (int i = 0; i < INVERSE_ITERATIONS; i++) {
            vector = solve(pivots, vector);
        }
        BigDecimal weight = BigDecimal.ZERO;
        for (int i = 0; i < vector.length; i++) {
            weight = weight.add(capacity[i].multiply(vector[i].pow(2, DIGITS), DIGITS), DIGITS);
        }
        return vector[0]
                .pow(2, DIGITS)
                .divide(weight, DIGITS)
                .divide(new BigDecimal(rate), DIGITS)
                .doubleValue();
    }

    /** Returns x of (G - rate C) x = C b, by the pivots of the matrix. */
    private BigDecimal[] solve(BigDecimal[] pivots, BigDecimal[] from) {
        int count = pivots.length;
        BigDecimal[] x = new BigDecimal[count];
        for (int i = 0; i < count; i++) {
            x[i] = capacity[i].multiply(from[i], DIGITS);
            if (i > 0) {
                BigDecimal factor = conductance[i - 1].divide(pivots[i - 1], DIGITS);
                x[i] = x[i].add(factor.multiply(x[i - 1], DIGITS), DIGITS);
            }
        }
        BigDecimal greatest = BigDecimal.ZERO;
        for (int i = count - 1; i >= 0; i--) {
            if (i < count - 1) {
                x[i] = x[i].add(conductance[i].multiply(x[i + 1], DIGITS), DIGITS);
            }
            x[i] = x[i].divide(pivots[i], DIGITS);
            greatest = greatest.max(x[i].abs());
        }
        for (int i = 0; i < count; i++) {
            x[i] = x[i].divide(greatest, DIGITS);
        }
        return x;
    }
}
