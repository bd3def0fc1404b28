// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.chart.AxisMapping;

/** Sets a {@link Layer} into the plot of the chart library, which draws it clipped and over the grid. */
final class LayerAnnotation extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;

    private final transient Look look;
    private final transient Optional<PixelGround> ground;
    private final transient Layer layer;

    LayerAnnotation(Look look, Optional<PixelGround> ground, Layer layer) {
        this.look = look;
        this.ground = ground;
        this.layer = layer;
    }

    @Override
    public void draw(
            Graphics2D graphics,
            XYPlot plot,
            Rectangle2D dataArea,
            ValueAxis domainAxis,
            ValueAxis rangeAxis,
            int rendererIndex,
            PlotRenderingInfo info) {
        layer.draw(new Stage(
                look, graphics, dataArea, xMapping(domainAxis, dataArea), yMapping(rangeAxis, dataArea), ground));
    }

    static AxisMapping xMapping(ValueAxis axis, Rectangle2D area) {
        return new AxisMapping(scale(axis), axis.getLowerBound(), axis.getUpperBound(), area.getMinX(), area.getMaxX());
    }

    static AxisMapping yMapping(ValueAxis axis, Rectangle2D area) {
        return new AxisMapping(scale(axis), axis.getLowerBound(), axis.getUpperBound(), area.getMaxY(), area.getMinY());
    }

    private static Scale scale(ValueAxis axis) {
        return axis instanceof PlannedLogAxis ? Scale.LOG : Scale.LINEAR;
    }
}
