// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.CurvePlots;
import org.ohmstead.curves.CurvePlots.VoltsRange;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.PowerPoint;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Rating;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/**
 * The chart of one group, and which entry of the log each of its points stands for.
 *
 * @param plot what is drawn
 * @param sources the entries behind the points of each series of readings, by the series' name
 */
record PowerPlot(Plot plot, Map<String, List<LogEntry>> sources) {
    PowerPlot {
        sources = Map.copyOf(sources);
    }

    /** Returns the entry behind a point, or empty when the point is none of a reading. */
    Optional<LogEntry> entryOf(String series, int index) {
        List<LogEntry> entries = sources.getOrDefault(series, List.of());
        return index >= 0 && index < entries.size() ? Optional.of(entries.get(index)) : Optional.empty();
    }

    /**
     * Returns the chart of a group.
     *
     * @param chosen the entry that the user looks at; its point is ringed
     */
    static PowerPlot of(PowerStudy study, CurveGroup group, ChannelChoice channels, Optional<LogEntry> chosen) {
        // What is drawn goes into saved pictures and tables too, and names tell what the user has hidden.
        return Numbers.withPoint(() -> new Drawing(study, group, channels.of(group), chosen).draw());
    }

    private static final class Drawing {
        private final PowerStudy study;
        private final CurveGroup group;
        private final List<LoadCurve> curves;
        private final Optional<LogEntry> chosen;
        private final boolean severalChannels;
        private final Map<String, List<LogEntry>> sources = new LinkedHashMap<>();
        private Plot plot;

        Drawing(PowerStudy study, CurveGroup group, List<LoadCurve> curves, Optional<LogEntry> chosen) {
            this.study = study;
            this.group = group;
            this.curves = curves;
            this.chosen = chosen;
            this.severalChannels = group.channels().size() > 1;
            this.plot = Plot.of(
                    "",
                    Axis.linear("Supply at the amplifier's terminals", "V"),
                    Axis.linear("Power " + Words.perWhat(group.mode()), "W").withLower(0));
        }

        PowerPlot draw() {
            List<RatingResult> ratings = study.ratingsOf(group);
            for (LoadCurve curve : curves) {
                draw(curve, ratings);
            }
            ratings.forEach(this::draw);
            return new PowerPlot(plot, sources);
        }

        private void draw(LoadCurve curve, List<RatingResult> ratings) {
            int tone = tone(curve);
            List<Rating> own = ratings.stream()
                    .map(RatingResult::rating)
                    .filter(rating -> CurvePlots.ratedLoad(rating, curve.nominalLoadOhms()))
                    .toList();
            VoltsRange range = CurvePlots.range(curve, own);
            String name = seriesName(curve, severalChannels);
            // The readings come first, so that the legend shows their marker; one name lets its toggle hide all three.
            plot = plot.withSeries(CurvePlots.readings(curve, name, Drawing::expanded, tone));
            if (range.upperVolts() > range.lowerVolts()) {
                plot = plot.withBand(CurvePlots.band(curve, range, name, Drawing::expanded, tone))
                        .withSeries(CurvePlots.line(curve, range, name, tone));
            }
            List<LogEntry> entries = study.entriesOf(curve);
            sources.put(name, entries);
            for (int index = 0; index < entries.size(); index++) {
                String id = entries.get(index).id();
                if (chosen.map(entry -> entry.id().equals(id)).orElse(false)) {
                    PowerPoint point = curve.points().get(index);
                    plot = plot.withMark(
                            Mark.point(point.supplyVolts(), point.powerWatts(), id, MarkerShape.HOLLOW_CIRCLE));
                }
            }
        }

        private void draw(RatingResult result) {
            Rating rating = result.rating();
            OptionalInt tone = OptionalInt.empty();
            for (LoadCurve curve : curves) {
                if (tone.isEmpty() && CurvePlots.ratedLoad(rating, curve.nominalLoadOhms())) {
                    tone = OptionalInt.of(tone(curve));
                }
            }
            String text = Numbers.shown(rating.powerWatts()) + "\u00a0W: " + Words.verdict(result.outcome());
            plot = plot.withMark(new Mark.Point(rating.supplyVolts(), rating.powerWatts(), text, shape(result), tone));
        }

        private static double expanded(Estimate power) {
            return Coverage.expanded(power.standardUncertainty());
        }

        /** A load has its colour in every chart; where each channel has a curve, each curve has its own. */
        private int tone(LoadCurve curve) {
            boolean alone = curves.stream()
                            .filter(each -> each.nominalLoadOhms() == curve.nominalLoadOhms())
                            .count()
                    == 1;
            int index = alone ? study.loadsOhms().indexOf(curve.nominalLoadOhms()) : curves.indexOf(curve);
            return index % Palette.TONES;
        }
    }

    /** Returns the name of a curve in the legend. */
    static String seriesName(LoadCurve curve, boolean severalChannels) {
        return Words.ohms(curve.nominalLoadOhms()) + (severalChannels ? ", " + curve.channel() : "");
    }

    /** Returns the marker of a rating: each verdict has a shape of its own. */
    static MarkerShape shape(RatingResult result) {
        if (result.outcome().isEmpty()) {
            return MarkerShape.HOLLOW_TRIANGLE_UP;
        }
        return switch (result.outcome().get().verdict()) {
            case MEETS -> MarkerShape.HOLLOW_DIAMOND;
            case FALLS_SHORT -> MarkerShape.CROSS;
            case UNDECIDED -> MarkerShape.HOLLOW_SQUARE;
        };
    }
}
