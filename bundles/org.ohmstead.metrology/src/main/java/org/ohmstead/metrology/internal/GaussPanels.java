// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.internal;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/** Integrals by Gauss-Legendre quadrature of 20 points on each of several panels. */
public final class GaussPanels {

    private static final int POINTS = 20;
    private static final double[] NODES = new double[POINTS];
    private static final double[] WEIGHTS = new double[POINTS];

    static {
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(POINTS);
        for (int i = 0; i < POINTS; i++) {
            NODES[i] = rule.getPoint(i);
            WEIGHTS[i] = rule.getWeight(i);
        }
    }

    private GaussPanels() {}

    /** Returns the integral over neighbouring panels; the breaks ascend. */
    public static double overBreaks(DoubleUnaryOperator function, double[] breaks) {
        double sum = 0;
        for (int panel = 1; panel < breaks.length; panel++) {
            double middle = (breaks[panel] + breaks[panel - 1]) / 2;
            double half = (breaks[panel] - breaks[panel - 1]) / 2;
            if (half > 0) {
                double part = 0;
                for (int i = 0; i < POINTS; i++) {
                    part += WEIGHTS[i] * function.applyAsDouble(middle + half * NODES[i]);
                }
                sum += half * part;
            }
        }
        return sum;
    }

    /** Returns the integral from lower to upper over panels of equal width. */
    public static double over(DoubleUnaryOperator function, double lower, double upper, int panels) {
        double[] breaks = new double[panels + 1];
        for (int i = 0; i <= panels; i++) {
            breaks[i] = lower + (upper - lower) * i / panels;
        }
        return overBreaks(function, breaks);
    }
}
