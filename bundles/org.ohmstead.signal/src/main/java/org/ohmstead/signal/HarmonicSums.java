// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Harmonics of many segments of one record. Each is turned by its order times the phase of its segment's fundamental, so that what
 * belongs to the tone adds up and noise does not.
 */
final class HarmonicSums {
    private static final int MOST_WAVE_ORDERS = 40;
    private static final int WAVE_PERIOD = 128;
    private static final int WAVE_CYCLES = 16;

    private final double[] inPhase;
    private final double[] quadrature;
    private final double[] squares;
    private double weight;
    private double radians;
    private int count;
    private int orders;

    HarmonicSums(int mostOrders) {
        inPhase = new double[mostOrders + 1];
        quadrature = new double[mostOrders + 1];
        squares = new double[mostOrders + 1];
        orders = mostOrders;
    }

    /** Adds a segment. */
    void add(HarmonicFit fit) {
        orders = Math.min(orders, fit.orders());
        double fundamental = fit.amplitudeVolts(1);
        for (int n = 1; n <= orders; n++) {
            double amplitude = fit.amplitudeVolts(n);
            double phase = fit.sinePhaseRadians(n);
            inPhase[n] += fundamental * amplitude * Math.cos(phase);
            quadrature[n] += fundamental * amplitude * Math.sin(phase);
            squares[n] += 0.5 * amplitude * amplitude;
        }
        weight += fundamental * fundamental;
        radians += fit.radiansPerSample();
        count++;
    }

    /** Adds all that another sum holds. */
    void add(HarmonicSums other) {
        orders = Math.min(orders, other.orders);
        for (int n = 1; n <= orders; n++) {
            inPhase[n] += other.inPhase[n];
            quadrature[n] += other.quadrature[n];
            squares[n] += other.squares[n];
        }
        weight += other.weight;
        radians += other.radians;
        count += other.count;
    }

    int count() {
        return count;
    }

    int orders() {
        return orders;
    }

    /** Sum of the squared amplitudes of the fundamental. */
    double weight() {
        return weight;
    }

    double meanRadiansPerSample() {
        return radians / count;
    }

    /** Mean over the segments of the square of the RMS value of one order, with what noise adds to it. */
    double meanSquare(int order) {
        return squares[order] / count;
    }

    /** Amplitude of one order over that of the fundamental. */
    double ratio(int order) {
        return Math.hypot(inPhase[order], quadrature[order]) / weight;
    }

    /** Phase of one order as a sine, with the time origin where the fundamental crosses zero upwards. */
    double sinePhaseRadians(int order) {
        return Math.atan2(quadrature[order], inPhase[order]);
    }

    /** Judges whether the tops of the mean wave are cut off. */
    Clipping clipping(int highestOrder, double factorVariance) {
        int wanted = Math.min(orders, MOST_WAVE_ORDERS);
        double peak = Math.sqrt(2 * meanSquare(1));
        double[] wave = new double[WAVE_PERIOD * WAVE_CYCLES];
        for (int i = 0; i < WAVE_PERIOD; i++) {
            for (int n = 1; n <= wanted; n++) {
                wave[i] += peak * ratio(n) * Math.sin(2 * Math.PI * n * i / WAVE_PERIOD + sinePhaseRadians(n));
            }
        }
        for (int i = WAVE_PERIOD; i < wave.length; i++) {
            wave[i] = wave[i - WAVE_PERIOD];
        }
        HarmonicFit fit = HarmonicFit.of(wave, 2 * Math.PI / WAVE_PERIOD, wanted, false);
        return ClippingFit.of(fit, Math.min(wanted, highestOrder), factorVariance);
    }
}
