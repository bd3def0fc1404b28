// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.ui.RectangleEdge;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.chart.ChartFonts;

class UprightNameTest {
    private static final Font FONT = ChartFonts.bundled().regular();
    private static final Rectangle2D PLOT = new Rectangle2D.Double(0, 20, 400, 150);
    private static final Rectangle2D DATA = new Rectangle2D.Double(40, 20, 360, 110);

    private final Graphics2D graphics = new BufferedImage(10, 10, BufferedImage.TYPE_INT_ARGB).createGraphics();

    private static NumberAxis named(String name) {
        NumberAxis axis = new NumberAxis(name);
        axis.setLabelFont(FONT);
        return axis;
    }

    private double length(NumberAxis axis) {
        return axis.getLabelFont()
                .getStringBounds(axis.getLabel(), graphics.getFontRenderContext())
                .getWidth();
    }

    private Rectangle2D beside(NumberAxis axis) {
        return UprightName.beside(axis, graphics, PLOT, DATA, RectangleEdge.LEFT);
    }

    @Test
    void aShortNameStandsBesideTheMiddleOfTheAxis() {
        NumberAxis axis = named("Power (W)");
        assertEquals(DATA, beside(axis));
        assertEquals(FONT, axis.getLabelFont());
    }

    @Test
    void aLongNameMovesDownInsteadOfRunningOverTheHeading() {
        NumberAxis axis = named("Over the fundamental (%)");
        assertTrue(length(axis) > DATA.getHeight() && length(axis) < PLOT.getHeight(), "" + length(axis));
        double top = beside(axis).getCenterY() - length(axis) / 2;
        assertEquals(PLOT.getMinY(), top, 1e-6);
        assertEquals(FONT, axis.getLabelFont());
    }

    @Test
    void aNameLongerThanTheChartBecomesSmaller() {
        NumberAxis axis = named("Probability that the rating is met (%)");
        assertTrue(length(axis) > PLOT.getHeight());
        double top = beside(axis).getCenterY() - length(axis) / 2;
        assertTrue(axis.getLabelFont().getSize2D() < FONT.getSize2D());
        assertTrue(length(axis) <= PLOT.getHeight() + 1, "" + length(axis));
        assertEquals(PLOT.getMinY(), top, 1);
    }

    @Test
    void thereIsALeastSize() {
        NumberAxis axis =
                named("Probability that the rating is met (%) ".repeat(5).strip());
        beside(axis);
        assertEquals(0.7 * FONT.getSize2D(), axis.getLabelFont().getSize2D(), 1e-4);
    }

    @Test
    void theNameBelowTheChartStaysWhereItIs() {
        NumberAxis axis =
                named("Probability that the rating is met (%) ".repeat(5).strip());
        assertSame(DATA, UprightName.beside(axis, graphics, PLOT, DATA, RectangleEdge.BOTTOM));
        assertEquals(FONT, axis.getLabelFont());
    }
}
