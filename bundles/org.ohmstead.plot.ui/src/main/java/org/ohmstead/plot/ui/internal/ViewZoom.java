// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.chart.ChartRanges;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.plot.ui.internal.AxisZoom.Span;

/** Zooming and panning of both axes together; windows in, windows out, empty being the whole. */
public final class ViewZoom {
    private final AxisZoom x;
    private final AxisZoom y;

    /** Makes the rules for a plot that shows {@code home} when nothing is zoomed. */
    public ViewZoom(ChartRanges home, Scale xScale, Scale yScale) {
        x = new AxisZoom(xScale, home.lowerX(), home.upperX());
        y = new AxisZoom(yScale, home.lowerY(), home.upperY());
    }

    /** Returns the window made narrower by the factors around a place; 1 leaves an axis as it is. */
    public Optional<ViewWindow> zoomed(
            Optional<ViewWindow> now, double placeX, double placeY, double factorX, double factorY) {
        Span spanX = spanX(now);
        Span spanY = spanY(now);
        return window(
                factorX == 1 ? spanX : x.zoomed(spanX, placeX, factorX),
                factorY == 1 ? spanY : y.zoomed(spanY, placeY, factorY));
    }

    /** Returns the window moved by shares of its own width and height. */
    public Optional<ViewWindow> moved(Optional<ViewWindow> now, double shareX, double shareY) {
        return window(x.moved(spanX(now), shareX), y.moved(spanY(now), shareY));
    }

    /** Returns the nearest window that is allowed. */
    public Optional<ViewWindow> clamped(Optional<ViewWindow> wanted) {
        return wanted.isEmpty() ? wanted : window(x.clamped(spanX(wanted)), y.clamped(spanY(wanted)));
    }

    /** Returns the ends of x in view. */
    public Span spanX(Optional<ViewWindow> window) {
        return window.map(each -> new Span(each.lowerX(), each.upperX())).orElseGet(x::home);
    }

    /** Returns the ends of y in view. */
    public Span spanY(Optional<ViewWindow> window) {
        return window.filter(each -> each.lowerY().isPresent())
                .map(each -> new Span(each.lowerY().getAsDouble(), each.upperY().getAsDouble()))
                .orElseGet(y::home);
    }

    private Optional<ViewWindow> window(Span spanX, Span spanY) {
        boolean wholeY = y.isHome(spanY);
        if (wholeY && x.isHome(spanX)) {
            return Optional.empty();
        }
        return Optional.of(new ViewWindow(
                spanX.lower(),
                spanX.upper(),
                wholeY ? OptionalDouble.empty() : OptionalDouble.of(spanY.lower()),
                wholeY ? OptionalDouble.empty() : OptionalDouble.of(spanY.upper())));
    }
}
