// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.util.Objects;

/**
 * How a chart is drawn.
 *
 * @param look its colours
 * @param legend whether the legend stands below the axes; false where the surroundings show one of their own
 */
public record ChartOptions(ChartLook look, boolean legend) {
    /** As on paper: light, with legend. */
    public static final ChartOptions PAPER = new ChartOptions(ChartLook.LIGHT, true);

    /** Checks the parameters. */
    public ChartOptions {
        Objects.requireNonNull(look, "look");
    }
}
