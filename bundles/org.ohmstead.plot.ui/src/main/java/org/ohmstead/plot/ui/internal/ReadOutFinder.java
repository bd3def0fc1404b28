// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Scale;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.chart.AxisMapping;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;

/** Finds what a picture shows at a place. */
public final class ReadOutFinder {
    /** How near, in pixels, a lone point must be to the crosshair to be read out. */
    private static final double POINT_REACH = 24;

    private static final double ON_POINT = 0.5;
    private static final double HIT_REACH = 8;
    private static final double FINER = 0.1;
    private static final Messages TEXTS = Messages.of(ReadOutFinder.class);

    private final Picture picture;
    private final ReadOutStyle style;

    /** Makes a finder for the picture. */
    public ReadOutFinder(Picture picture) {
        this(picture, ReadOutStyle.USUAL);
    }

    /** Makes a finder for the picture that writes values in a style. */
    public ReadOutFinder(Picture picture, ReadOutStyle style) {
        this.picture = picture;
        this.style = style;
    }

    /** Returns the values at x. */
    public PlotReadOut at(double x, Optional<ChosenPoint> point) {
        List<PlotReadOut.Entry> entries = new ArrayList<>();
        for (Track track : picture.tracks()) {
            entry(track, x).ifPresent(entries::add);
        }
        List<PlotReadOut.BandEntry> bands = new ArrayList<>();
        for (Band band : picture.visible().bands()) {
            bandEntry(band, x).ifPresent(bands::add);
        }
        return new PlotReadOut(x, xText(x), entries, bands, point);
    }

    /** Returns the data point within a few pixels of a place, in unscaled pixels. */
    public Optional<ChosenPoint> hit(double pixelX, double pixelY) {
        double best = HIT_REACH;
        Optional<ChosenPoint> found = Optional.empty();
        for (Track track : picture.tracks()) {
            if (!hasPoints(track.series())) {
                continue;
            }
            int from = 0;
            int to = track.size();
            if (track.rising()) {
                AxisMapping mapping = picture.layout().x();
                from = Math.max(0, track.lastAtOrBefore(mapping.toValue(pixelX - HIT_REACH)));
                to = Math.min(to, track.lastAtOrBefore(mapping.toValue(pixelX + HIT_REACH)) + 1);
            }
            for (int i = from; i < to; i++) {
                PlotPoint each = track.series().points().get(i);
                double distance = Math.hypot(
                        picture.layout().x().toPosition(each.x()) - pixelX,
                        picture.layout().y().toPosition(each.y()) - pixelY);
                if (distance <= best) {
                    best = distance;
                    found = Optional.of(new ChosenPoint(track.series().name(), i, each.x(), each.y()));
                }
            }
        }
        return found;
    }

    /** Returns the x of the next data point in view to the right, or with {@code step} -1 to the left. */
    public OptionalDouble nextPoint(double x, int step) {
        double best = Double.NaN;
        for (Track track : picture.tracks()) {
            for (int i = 0; i < track.size(); i++) {
                double each = track.x(i);
                boolean beyond = step > 0 ? each > x : each < x;
                boolean nearer = Double.isNaN(best) || Math.abs(each - x) < Math.abs(best - x);
                boolean inside = each >= picture.layout().x().lower()
                        && each <= picture.layout().x().upper();
                best = hasPoints(track.series()) && beyond && nearer && inside ? each : best;
            }
        }
        return Double.isNaN(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
    }

    private static boolean hasPoints(Series series) {
        return series.style().hasMarkers() || !series.style().hasLine();
    }

    private String xText(double x) {
        Axis axis = picture.visible().x();
        double resolution = resolution(picture.layout().x(), x);
        return Figures.value(x, resolution, axis.unit(), style);
    }

    private static double resolution(AxisMapping mapping, double value) {
        double position = mapping.toPosition(value);
        return Math.max(Math.abs(mapping.toValue(position + 1) - mapping.toValue(position)), Math.ulp(value));
    }

    private Optional<PlotReadOut.Entry> entry(Track track, double x) {
        Series series = track.series();
        int nearest = track.nearest(x);
        if (nearest < 0) {
            return Optional.empty();
        }
        double offset = Math.abs(pixelX(track.x(nearest)) - pixelX(x));
        OptionalDouble exact = picture.request().source().valueAt(series.name(), x);
        if (exact.isPresent()) {
            return Optional.of(between(series, x, exact.getAsDouble()));
        }
        boolean onPoint = track.x(nearest) == x || hasPoints(series) && offset <= ON_POINT;
        if (onPoint || !series.style().hasLine() && offset <= POINT_REACH) {
            return Optional.of(point(series, series.points().get(nearest), offset > ON_POINT));
        }
        return series.style().hasLine() && track.rising() ? interpolated(track, x) : Optional.empty();
    }

    private Optional<PlotReadOut.Entry> interpolated(Track track, double x) {
        int before = track.lastAtOrBefore(x);
        if (before < 0 || before >= track.size() - 1) {
            return Optional.empty();
        }
        PlotPoint left = track.series().points().get(before);
        PlotPoint right = track.series().points().get(before + 1);
        Scale xScale = picture.visible().x().scale();
        Scale yScale = picture.visible().y().scale();
        double share = (transformed(xScale, x) - transformed(xScale, left.x()))
                / (transformed(xScale, right.x()) - transformed(xScale, left.x()));
        double leftY = transformed(yScale, left.y());
        double y = leftY + share * (transformed(yScale, right.y()) - leftY);
        return Optional.of(between(track.series(), x, yScale == Scale.LOG ? Math.exp(y) : y));
    }

    private PlotReadOut.Entry between(Series series, double x, double y) {
        return new PlotReadOut.Entry(series.name(), series.tone(), x, y, false, OptionalDouble.empty(), yText(y));
    }

    private PlotReadOut.Entry point(Series series, PlotPoint point, boolean aside) {
        String unit = picture.visible().y().unit();
        String value = point.barHalfLength().isPresent()
                ? Figures.uncertain(point.y(), point.barHalfLength().getAsDouble(), unit, style)
                : yText(point.y());
        String text = aside ? TEXTS.text("readOut.at", value, xText(point.x())) : value;
        return new PlotReadOut.Entry(
                series.name(), series.tone(), point.x(), point.y(), true, point.barHalfLength(), text);
    }

    private Optional<PlotReadOut.BandEntry> bandEntry(Band band, double x) {
        List<BandPoint> points = band.points();
        int low = 0;
        int high = points.size() - 1;
        if (high < 1 || x < points.get(0).x() || x > points.get(high).x()) {
            return Optional.empty();
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (points.get(middle).x() <= x) {
                low = middle;
            } else {
                high = middle;
            }
        }
        BandPoint left = points.get(low);
        BandPoint right = points.get(high);
        double width = right.x() - left.x();
        double share = width > 0 ? (x - left.x()) / width : 0;
        double lower = left.lower() + share * (right.lower() - left.lower());
        double upper = left.upper() + share * (right.upper() - left.upper());
        String text =
                TEXTS.text("readOut.range", style.number(Figures.number(lower, yResolution(lower))), yText(upper));
        return Optional.of(new PlotReadOut.BandEntry(band.name(), band.tone(), lower, upper, text));
    }

    private String yText(double y) {
        return Figures.value(y, yResolution(y), picture.visible().y().unit(), style);
    }

    private double yResolution(double y) {
        AxisMapping mapping = picture.layout().y();
        double inside = Math.max(mapping.lower(), Math.min(mapping.upper(), y));
        return FINER * resolution(mapping, inside);
    }

    private double pixelX(double x) {
        return picture.layout().x().toPosition(x);
    }

    private static double transformed(Scale scale, double value) {
        return scale == Scale.LOG ? Math.log(value) : value;
    }
}
