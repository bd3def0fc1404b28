// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.util.Objects;

/**
 * A data point that the user pointed at.
 *
 * @param series the name of its series
 * @param index its place among the points of that series in the plot in view, from 0
 * @param x its place along the x axis
 * @param y its value
 */
public record ChosenPoint(String series, int index, double x, double y) {
    /** Checks the parameters. */
    public ChosenPoint {
        Objects.requireNonNull(series, "series");
        if (index < 0) {
            throw new IllegalArgumentException("index must be 0 or more but is " + index + ".");
        }
    }
}
