// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.CurvePlots;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.PowerPoint;
import org.ohmstead.curves.ui.internal.Comparison.Overlay;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Draws what is laid over a chart: dashed, with empty markers, each load in the colour that it has there. */
final class OverlayDrawing {
    private static final List<MarkerShape> SHAPES = List.of(
            MarkerShape.HOLLOW_CIRCLE,
            MarkerShape.HOLLOW_SQUARE,
            MarkerShape.HOLLOW_TRIANGLE_UP,
            MarkerShape.HOLLOW_DIAMOND);

    private final List<Double> loadsOhms;
    private final List<LoadCurve> beneath;
    private final ChannelChoice channels;

    /**
     * Will draw over a chart.
     *
     * @param study whose loads have colours
     * @param inView the group in the chart
     * @param channels of it that are shown
     */
    OverlayDrawing(PowerCurves study, CurveGroup inView, ChannelChoice channels) {
        loadsOhms = new ArrayList<>(study.loadsOhms());
        beneath = channels.of(inView);
        this.channels = channels;
    }

    /** Returns the plot with all overlays in it. */
    Plot draw(Plot plot, List<Overlay> overlays) {
        Plot drawn = plot;
        for (Overlay overlay : overlays) {
            List<LoadCurve> wanted = channels.of(overlay.group());
            // Another amplifier may call its channels something else.
            for (LoadCurve curve : wanted.isEmpty() ? overlay.group().weakest() : wanted) {
                drawn = draw(drawn, overlay, curve);
            }
        }
        return drawn;
    }

    private Plot draw(Plot plot, Overlay overlay, LoadCurve curve) {
        String name = PowerPlot.seriesName(curve, overlay.group().channels().size() > 1) + " \u00b7 "
                + overlay.source().label();
        int tone = tone(curve);
        Series line = CurvePlots.line(curve, CurvePlots.range(curve, List.of()), name, tone);
        Plot drawn = plot.withSeries(new Series(name, line.points(), Style.DASHED_LINE, tone));
        double last = curve.points().stream()
                .map(PowerPoint::supplyVolts)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        MarkerShape shape = SHAPES.get((overlay.number() - 1) % SHAPES.size());
        boolean numbered = false;
        for (PowerPoint point : curve.points()) {
            boolean number = !numbered && point.supplyVolts() == last;
            numbered = numbered || number;
            drawn = drawn.withMark(Mark.point(
                    point.supplyVolts(),
                    point.powerWatts(),
                    number ? Integer.toString(overlay.number()) : "",
                    shape,
                    tone));
        }
        return drawn;
    }

    private int tone(LoadCurve curve) {
        List<LoadCurve> sameLoad = beneath.stream()
                .filter(each -> each.nominalLoadOhms() == curve.nominalLoadOhms())
                .toList();
        if (sameLoad.size() > 1) {
            for (LoadCurve each : sameLoad) {
                if (each.channel().equals(curve.channel())) {
                    return beneath.indexOf(each) % Palette.TONES;
                }
            }
        }
        if (!loadsOhms.contains(curve.nominalLoadOhms())) {
            loadsOhms.add(curve.nominalLoadOhms());
        }
        return loadsOhms.indexOf(curve.nominalLoadOhms()) % Palette.TONES;
    }
}
