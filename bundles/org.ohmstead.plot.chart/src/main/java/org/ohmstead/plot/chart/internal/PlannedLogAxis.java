// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.ohmstead.plot.Axis;

/** A logarithmic axis whose ticks come from a {@link TickPlan}. */
final class PlannedLogAxis extends LogAxis {
    private static final long serialVersionUID = 1L;

    private final transient Axis axis;

    PlannedLogAxis(Axis axis) {
        super(axis.caption());
        this.axis = axis;
    }

    @Override
    public List<NumberTick> refreshTicks(
            Graphics2D graphics, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
        boolean horizontal = RectangleEdge.isTopOrBottom(edge);
        return new TickPlan(axis, horizontal, graphics, getTickLabelFont())
                .ticks(
                        getRange().getLowerBound(),
                        getRange().getUpperBound(),
                        horizontal ? dataArea.getWidth() : dataArea.getHeight());
    }
}
