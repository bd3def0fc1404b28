// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.chart.ChartRanges;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.plot.ui.internal.AxisZoom.Span;

class AxisZoomTest {
    private static final double TOLERANCE = 1e-9;

    private final AxisZoom linear = new AxisZoom(Scale.LINEAR, 10, 20);
    private final AxisZoom log = new AxisZoom(Scale.LOG, 10, 100_000);

    @Test
    void zoomKeepsTheAnchorWhereItIs() {
        // Twice as narrow around 12: 10 is 2 below and becomes 11, 20 is 8 above and becomes 16.
        Span span = linear.zoomed(linear.home(), 12, 2);
        assertEquals(11, span.lower(), TOLERANCE);
        assertEquals(16, span.upper(), TOLERANCE);
    }

    @Test
    void logAxisZoomsInRatios() {
        // Four decades around 1000, their middle: twice as narrow is one decade to either side.
        Span span = log.zoomed(log.home(), 1000, 2);
        assertEquals(100, span.lower(), 100 * TOLERANCE);
        assertEquals(10_000, span.upper(), 10_000 * TOLERANCE);
    }

    @Test
    void logAxisPansByRatios() {
        Span span = log.moved(new Span(100, 1000), 0.5);
        assertEquals(100 * Math.sqrt(10), span.lower(), 1e-6);
        assertEquals(1000 * Math.sqrt(10), span.upper(), 1e-6);
    }

    @Test
    void neverWiderThanHome() {
        assertEquals(linear.home(), linear.zoomed(new Span(12, 14), 13, 0.001));
        assertEquals(linear.home(), linear.clamped(new Span(-100, 100)));
        assertTrue(linear.isHome(linear.moved(linear.home(), 0.3)));
    }

    @Test
    void neverSoNarrowThatDigitsRunOut() {
        Span span = linear.home();
        for (int i = 0; i < 200; i++) {
            span = linear.zoomed(span, 12.345, 4);
        }
        assertEquals(1e-6, span.upper() - span.lower(), 1e-8);
        assertTrue(span.lower() < 12.345 && span.upper() > 12.345, span.toString());
    }

    @Test
    void panStopsATenthBeyondTheEdge() {
        Span span = linear.moved(new Span(18, 20), 50);
        assertEquals(20.2, span.upper(), TOLERANCE);
        assertEquals(18.2, span.lower(), TOLERANCE);
    }

    @Test
    void wholeAxesAreNoWindow() {
        ViewZoom zoom = new ViewZoom(new ChartRanges(0, 10, 0, 100), Scale.LINEAR, Scale.LINEAR);
        Optional<ViewWindow> in = zoom.zoomed(Optional.empty(), 5, 50, 2, 1);
        assertEquals(Optional.of(ViewWindow.ofX(2.5, 7.5)), in);
        Optional<ViewWindow> both = zoom.zoomed(in, 5, 50, 1, 4);
        assertEquals(Optional.of(ViewWindow.of(2.5, 7.5, 37.5, 62.5)), both);
        assertEquals(Optional.empty(), zoom.zoomed(both, 5, 50, 0.01, 0.01));
    }
}
