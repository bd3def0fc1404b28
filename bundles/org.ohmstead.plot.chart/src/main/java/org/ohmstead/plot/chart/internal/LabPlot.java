// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.axis.ValueTick;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.ohmstead.plot.chart.AxisMapping;

/** A plot of the chart library that draws no grid line where an axis is: the grid comes later and would hide it. */
final class LabPlot extends XYPlot {
    private static final long serialVersionUID = 1L;
    private static final double ON_THE_AXIS_POINTS = 1;

    LabPlot(ValueAxis domain, ValueAxis range) {
        // The library draws the grid only where there is a renderer; ours draw as annotations, so this one stays idle.
        super(null, domain, range, new XYLineAndShapeRenderer());
    }

    @Override
    protected void drawDomainGridlines(Graphics2D graphics, Rectangle2D dataArea, List<ValueTick> ticks) {
        AxisMapping mapping = LayerAnnotation.xMapping(getDomainAxis(), dataArea);
        super.drawDomainGridlines(graphics, dataArea, offTheAxis(ticks, mapping));
    }

    @Override
    protected void drawRangeGridlines(Graphics2D graphics, Rectangle2D dataArea, List<ValueTick> ticks) {
        AxisMapping mapping = LayerAnnotation.yMapping(getRangeAxis(), dataArea);
        super.drawRangeGridlines(graphics, dataArea, offTheAxis(ticks, mapping));
    }

    private static List<ValueTick> offTheAxis(List<ValueTick> ticks, AxisMapping mapping) {
        return ticks.stream()
                .filter(tick ->
                        Math.abs(mapping.toPosition(tick.getValue()) - mapping.lowerPosition()) > ON_THE_AXIS_POINTS)
                .toList();
    }
}
