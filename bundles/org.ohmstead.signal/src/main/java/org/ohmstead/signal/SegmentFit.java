// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Fits one segment after the other of a long record as {@link HarmonicFit} fits a whole one. What all segments share, such as the
 * window's weights, is made once, and as the frequency is known from the segment before, a single step finds it.
 */
final class SegmentFit {
    private static final Window WINDOW = Window.BLACKMAN_HARRIS_4;
    private static final int MOST_STEPS = 15;
    /** What a step of this angle over the segment leaves, its square, is rounding. */
    private static final double FOUND_ANGLE = 1e-5;

    private final int size;
    private final int wantedOrders;
    private final double[] weights;
    private final double[] products;
    private final double[] moments;
    private final SegmentModel model;

    SegmentFit(int size, int wantedOrders) {
        this.size = size;
        this.wantedOrders = wantedOrders;
        weights = WINDOW.centredWeights(size);
        products = new double[size];
        moments = new double[size];
        model = new SegmentModel(size, wantedOrders);
    }

    /**
     * Fits a segment.
     *
     * @param volts its samples
     * @param startRadians frequency to start from, right to about half a cycle over the segment
     */
    HarmonicFit fit(double[] volts, double startRadians) {
        double middle = 0.5 * (size - 1);
        for (int i = 0; i < size; i++) {
            products[i] = weights[i] * volts[i];
            moments[i] = products[i] * (i - middle);
        }
        double radians = refine(startRadians);
        int orders = HarmonicFit.ordersFor(size, radians, WINDOW, wantedOrders);
        model.set(radians, orders);
        HarmonicBasis basis = new HarmonicBasis(size, radians, orders);
        double[] factors = basis.normal(WINDOW).solve(basis.project(products));
        return HarmonicFit.known(radians, orders, factors, volts, model.residual(volts, factors));
    }

    private double refine(double start) {
        double radians = start;
        double largest = Math.PI / size;
        for (int step = 0; step < MOST_STEPS; step++) {
            HarmonicBasis basis = new HarmonicBasis(size, radians, 1);
            FrequencyStep found = new FrequencyStep(basis, WINDOW, products, moments);
            if (!found.isDetermined()) {
                return radians;
            }
            double change = Math.max(-largest, Math.min(largest, found.radiansPerSample()));
            radians = Math.max(0.25 * start, Math.min(0.999 * Math.PI, radians + change));
            if (Math.abs(change) * size < FOUND_ANGLE) {
                return radians;
            }
        }
        return radians;
    }
}
