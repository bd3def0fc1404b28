// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.TableSpec;

/** The table of levels that were read. */
final class PointTable {
    private static final double[] THIRDS = {20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200};
    private static final double USUAL_LEVEL_DB = 90;

    private PointTable() {}

    static TableSpec<SoundPoint> spec(Supplier<SoundSeries> series) {
        return TableSpec.of("sound.points", Texts.say("table.one"), Texts.say("table.many"), columns(series))
                .withNewRow(PointTable::next)
                .withDuplicate((point, rows) -> point);
    }

    private static List<Column<SoundPoint>> columns(Supplier<SoundSeries> series) {
        return List.of(
                Columns.<SoundPoint>quantity(
                                "frequency",
                                Texts.say("column.frequency"),
                                Measure.of(Unit.HERTZ),
                                SoundPoint::frequencyHz,
                                (point, value) -> withFrequency(point, value))
                        .withWidth(13),
                Columns.<SoundPoint>optionalQuantity(
                                "drive",
                                Texts.say("column.drive"),
                                Measure.of(Unit.DECIBEL),
                                SoundPoint::driveDb,
                                (point, value) -> new SoundPoint(
                                        point.frequencyHz(),
                                        value,
                                        point.levelDb(),
                                        point.weighting(),
                                        point.position()))
                        .withHover(point -> Texts.say("hover.drive"))
                        .withWidth(10),
                Columns.<SoundPoint>quantity(
                                "level",
                                Texts.say("column.level"),
                                Measure.of(Unit.DECIBEL),
                                SoundPoint::levelDb,
                                (point, value) -> new SoundPoint(
                                        point.frequencyHz(),
                                        point.driveDb(),
                                        value,
                                        point.weighting(),
                                        point.position()))
                        .withShown(point -> Numbers.format("%.1f", point.levelDb()))
                        .withHover(point -> stated(series.get(), point))
                        .withWidth(10),
                Columns.<SoundPoint, FrequencyWeighting>choice(
                                "weighting",
                                Texts.say("column.weighting"),
                                List.of(FrequencyWeighting.values()),
                                FrequencyWeighting::name,
                                SoundPoint::weighting,
                                (point, value) -> new SoundPoint(
                                        point.frequencyHz(), point.driveDb(), point.levelDb(), value, point.position()))
                        .withHover(point -> Texts.say("hover.weighting"))
                        .withWidth(10),
                Columns.<SoundPoint>text(
                                "position",
                                Texts.say("column.position"),
                                SoundPoint::position,
                                (point, value) -> new SoundPoint(
                                        point.frequencyHz(),
                                        point.driveDb(),
                                        point.levelDb(),
                                        point.weighting(),
                                        value))
                        .withWidth(24));
    }

    private static SoundPoint withFrequency(SoundPoint point, double hertz) {
        if (!(hertz > 0)) {
            throw new IllegalArgumentException(Texts.say("table.frequency"));
        }
        return new SoundPoint(hertz, point.driveDb(), point.levelDb(), point.weighting(), point.position());
    }

    private static String stated(SoundSeries series, SoundPoint point) {
        double expanded = Coverage.expanded(series.level(point).standardUncertaintyDb());
        return Stated.of(point.levelDb(), expanded, value -> Numbers.format("%.1f", value))
                        .text() + "\u00a0dB (" + Coverage.words() + ")";
    }

    /** The row that Insert adds: the next third of an octave, else as in the last row. */
    static SoundPoint next(List<SoundPoint> rows) {
        if (rows.isEmpty()) {
            return new SoundPoint(THIRDS[0], OptionalDouble.empty(), USUAL_LEVEL_DB, FrequencyWeighting.C, "");
        }
        SoundPoint last = rows.get(rows.size() - 1);
        double hertz = last.frequencyHz();
        for (double each : THIRDS) {
            if (each > 1.01 * last.frequencyHz()) {
                hertz = each;
                break;
            }
        }
        return new SoundPoint(hertz, last.driveDb(), last.levelDb(), last.weighting(), last.position());
    }
}
