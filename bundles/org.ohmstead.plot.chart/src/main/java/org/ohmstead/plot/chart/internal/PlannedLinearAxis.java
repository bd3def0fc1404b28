// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.ohmstead.plot.Axis;

/** A linear axis whose ticks come from a {@link TickPlan}. */
final class PlannedLinearAxis extends NumberAxis {
    private static final long serialVersionUID = 1L;

    private final transient Axis axis;
    private final boolean decimalComma;

    PlannedLinearAxis(Axis axis, boolean decimalComma) {
        super(axis.caption());
        this.axis = axis;
        this.decimalComma = decimalComma;
    }

    @Override
    public List<NumberTick> refreshTicks(
            Graphics2D graphics, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
        boolean horizontal = RectangleEdge.isTopOrBottom(edge);
        return new TickPlan(axis, horizontal, decimalComma, graphics, getTickLabelFont())
                .ticks(
                        getRange().getLowerBound(),
                        getRange().getUpperBound(),
                        horizontal ? dataArea.getWidth() : dataArea.getHeight());
    }

    @Override
    protected AxisState drawLabel(
            String label,
            Graphics2D graphics,
            Rectangle2D plotArea,
            Rectangle2D dataArea,
            RectangleEdge edge,
            AxisState state) {
        Rectangle2D beside = UprightName.beside(this, graphics, plotArea, dataArea, edge);
        return super.drawLabel(label, graphics, plotArea, beside, edge, state);
    }
}
