// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import org.ohmstead.plot.chart.AxisMapping;

/**
 * What a layer needs for drawing: the graphics, the area between the axes, and where values lie.
 *
 * @param look colours and fonts
 * @param graphics clipped to the area
 * @param area the area between the axes
 * @param xMapping how x lies
 * @param yMapping how y lies
 * @param ground the pixels that the graphics draw on, where that is known
 */
record Stage(
        Look look,
        Graphics2D graphics,
        Rectangle2D area,
        AxisMapping xMapping,
        AxisMapping yMapping,
        Optional<PixelGround> ground) {
    // Far enough not to show; near enough for renderers that reckon in 32 bits.
    static final double FAR = 20_000;

    double x(double value) {
        return clamped(xMapping.toPosition(value));
    }

    double y(double value) {
        return clamped(yMapping.toPosition(value));
    }

    /** Where bars and areas begin: zero where the axis shows it, else the end of the axis nearest to it. */
    double baseline() {
        double zero = yMapping.toPosition(0);
        return Math.max(area.getMinY(), Math.min(area.getMaxY(), zero));
    }

    private static double clamped(double position) {
        return Math.max(-FAR, Math.min(FAR, position));
    }
}
