// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.function.DoubleUnaryOperator;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Lines of functions, drawn through many points. */
final class Lines {
    private static final int POINTS = 121;

    private Lines() {}

    /** Returns a function over equal steps. */
    static Series linear(String name, double least, double most, DoubleUnaryOperator function, Style style, int tone) {
        double[] x = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            x[i] = least + i * (most - least) / (POINTS - 1);
        }
        return through(name, x, function, style, tone);
    }

    /** Returns a function over equal ratios; {@code least} is above 0. */
    static Series log(String name, double least, double most, DoubleUnaryOperator function, Style style, int tone) {
        double[] x = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            x[i] = least * Math.pow(most / least, i / (POINTS - 1.0));
        }
        return through(name, x, function, style, tone);
    }

    private static Series through(String name, double[] x, DoubleUnaryOperator function, Style style, int tone) {
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            y[i] = function.applyAsDouble(x[i]);
        }
        return Series.of(name, x, y, style, tone);
    }
}
