// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.ohmstead.history.Trend;
import org.ohmstead.history.TrendPoint;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;

/** The values that an entry has of a figure. */
public final class FigureValues {
    private FigureValues() {}

    /** Returns them by whose they are; power that did not reach its end point is a bound and none. */
    public static Map<Trend.Line, TrendPoint> of(LogEntry entry, String figureId) {
        Map<Trend.Line, TrendPoint> found = new LinkedHashMap<>();
        entry.reading().ifPresent(reading -> ofReading(found, entry.id(), reading, figureId));
        entry.figures().ifPresent(figures -> ofFigures(found, entry.id(), figures, figureId));
        return found;
    }

    private static String specimen(Provenance provenance) {
        return provenance.specimen().map(Words::specimen).orElse("");
    }

    private static void ofReading(Map<Trend.Line, TrendPoint> found, String entryId, Reading reading, String figureId) {
        String unit = unit(figureId);
        if (unit.isEmpty()) {
            return;
        }
        for (ChannelReading channel : reading.channels()) {
            if (channel.outcome() == EndPointOutcome.REACHED) {
                found.put(
                        new Trend.Line(
                                specimen(reading.provenance()),
                                figureId,
                                unit,
                                reading.stepId(),
                                channel.channel(),
                                ""),
                        new TrendPoint(
                                entryId,
                                reading.takenAt(),
                                value(channel, figureId),
                                figureId.equals(Trend.POWER)
                                        ? OptionalDouble.of(channel.standardUncertaintyWatts())
                                        : OptionalDouble.empty()));
            }
        }
    }

    private static String unit(String figureId) {
        return switch (figureId) {
            case Trend.POWER -> "W";
            case Trend.THD -> "%";
            case Trend.SUPPLY -> "V";
            default -> "";
        };
    }

    private static double value(ChannelReading channel, String figureId) {
        return switch (figureId) {
            case Trend.POWER -> channel.powerWatts();
            case Trend.THD -> 100 * channel.thdFRatio();
            default -> channel.supplyVolts();
        };
    }

    private static void ofFigures(
            Map<Trend.Line, TrendPoint> found, String entryId, MeasuredFigures figures, String figureId) {
        for (MeasuredFigure figure : figures.figures()) {
            if (figure.id().equals(figureId) && !saidByReading(figures, figure)) {
                found.put(
                        new Trend.Line(
                                specimen(figures.provenance()),
                                figureId,
                                figure.unit(),
                                figures.stepId(),
                                figure.channel(),
                                figure.at()),
                        new TrendPoint(entryId, figures.takenAt(), figure.value(), figure.standardUncertainty()));
            }
        }
    }

    /** The power of a run stands in its reading already; only that of a frequency or level does not. */
    private static boolean saidByReading(MeasuredFigures figures, MeasuredFigure figure) {
        return figure.id().equals(Trend.POWER)
                && figure.at().isEmpty()
                && !figures.measurementId().equals(TypedCheck.PROCEDURE_ID);
    }
}
