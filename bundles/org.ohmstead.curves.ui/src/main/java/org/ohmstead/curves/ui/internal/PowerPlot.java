// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
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
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/**
 * The chart of one group, and which entry of the log each of its points stands for.
 *
 * @param plot what is drawn
 * @param sources the entries behind the points of each series of readings, by the series' name
 */
record PowerPlot(Plot plot, Map<String, List<LogEntry>> sources) {
    private static final Messages TEXTS = Messages.of(PowerPlot.class);

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
     * @param jointly whether the curve of all loads, modes and channels together is drawn too
     */
    static PowerPlot of(
            PowerCurves study, CurveGroup group, ChannelChoice channels, Optional<LogEntry> chosen, boolean jointly) {
        // What is drawn goes into saved pictures and tables too, and names tell what the user has hidden.
        return Numbers.withPoint(() -> new Drawing(study, group, channels.of(group), chosen).draw(jointly));
    }

    /** Returns this with other data sets laid over it. */
    PowerPlot over(Comparison comparison, PowerCurves study, CurveGroup group, ChannelChoice channels) {
        OverlayDrawing drawing = new OverlayDrawing(study, group, channels);
        return new PowerPlot(Numbers.withPoint(() -> drawing.draw(plot, comparison.overlays())), sources);
    }

    private static final class Drawing {
        private static final int JOINT_STEPS = 48;

        private final PowerCurves study;
        private final CurveGroup group;
        private final List<LoadCurve> curves;
        private final Optional<LogEntry> chosen;
        private final boolean severalChannels;
        private final Map<String, List<LogEntry>> sources = new LinkedHashMap<>();
        private Plot plot;

        Drawing(PowerCurves study, CurveGroup group, List<LoadCurve> curves, Optional<LogEntry> chosen) {
            this.study = study;
            this.group = group;
            this.curves = curves;
            this.chosen = chosen;
            this.severalChannels = group.channels().size() > 1;
            this.plot = Plot.of(
                    "",
                    Axis.linear(TEXTS.text("plot.supply"), "V"),
                    Axis.linear(TEXTS.text("plot.power", Words.perWhat(group.mode())), "W")
                            .withLower(0));
        }

        PowerPlot draw(boolean jointly) {
            List<RatingResult> ratings = study.ratingsOf(group);
            for (LoadCurve curve : curves) {
                draw(curve, ratings);
            }
            if (jointly) {
                study.studyOf(group).flatMap(JointStudy::study).ifPresent(this::drawJointly);
            }
            ratings.forEach(this::draw);
            study.asidesOf(group).forEach(this::drawAside);
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
            String text =
                    TEXTS.text("plot.rating", Numbers.shown(rating.powerWatts()), Words.verdict(result.outcome()));
            plot = plot.withMark(new Mark.Point(rating.supplyVolts(), rating.powerWatts(), text, shape(result), tone));
        }

        /** The joint curve of each load in sight, dashed, in the load's colour. */
        private void drawJointly(PowerStudy joint) {
            double lowest = joint.lowestSupplyVolts();
            double span = joint.highestSupplyVolts() - lowest;
            for (double loadOhms :
                    curves.stream().map(LoadCurve::nominalLoadOhms).distinct().toList()) {
                List<PlotPoint> points = new ArrayList<>();
                for (int step = 0; step <= JOINT_STEPS; step++) {
                    double supplyVolts = lowest + span * step / JOINT_STEPS;
                    if (joint.predict(supplyVolts, loadOhms, group.mode()) instanceof PowerPrediction.Predicted at) {
                        points.add(new PlotPoint(supplyVolts, at.powerWatts()));
                    }
                }
                int tone = study.loadsOhms().indexOf(loadOhms) % Palette.TONES;
                plot = plot.withSeries(
                        new Series(TEXTS.text("plot.jointly", Words.ohms(loadOhms)), points, Style.DASHED_LINE, tone));
            }
        }

        /** What was set aside is an empty grey ring, so that nobody takes it for a reading that counts. */
        private void drawAside(LogEntry entry) {
            Reading reading = entry.reading().orElseThrow();
            for (ChannelReading channel : reading.channels()) {
                boolean inSight =
                        curves.stream().anyMatch(curve -> curve.channel().equals(channel.channel()));
                if (inSight && channel.outcome() == EndPointOutcome.REACHED) {
                    double powerWatts = channel.powerWatts() * channel.loadOhms() / reading.nominalLoadOhms();
                    plot = plot.withMark(Mark.point(
                            channel.supplyVolts(),
                            powerWatts,
                            TEXTS.text("plot.aside", entry.id()),
                            MarkerShape.HOLLOW_CIRCLE));
                }
            }
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
