// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.testlog.LogEntry;

/** The tables of levels and of figures. Headings name the unit. */
public final class OtherColumns {
    /** The headings of the levels. */
    public static final List<String> LEVEL_HEADINGS = List.of(
            "entry",
            "taken_at_utc",
            "step",
            "channel",
            "drive_dB",
            "output_Vrms",
            "power_W",
            "thd_f_percent",
            "thd_plus_noise_r_percent",
            "clipped",
            "supply_V",
            "supply_A",
            "voided",
            "capture_sha256");

    /** The headings of the figures; their units differ, so that each row names its own. */
    public static final List<String> FIGURE_HEADINGS = List.of(
            "entry",
            "recorded_at_utc",
            "taken_at_utc",
            "step",
            "mode",
            "load",
            "supply_V",
            "measurement",
            "bench_driver",
            "figure",
            "channel",
            "at",
            "value",
            "standard_uncertainty",
            "unit",
            "voided",
            "operator",
            "notes",
            "entry_hash");

    private OtherColumns() {}

    /** Returns a row for each level of a reading. */
    public static List<List<Cell>> levels(LogEntry entry) {
        List<List<Cell>> rows = new ArrayList<>();
        entry.reading().ifPresent(reading -> {
            for (ChannelReading channel : reading.channels()) {
                for (SweepPoint point : channel.sweep()) {
                    rows.add(level(entry, reading, channel, point));
                }
            }
        });
        return rows;
    }

    private static List<Cell> level(LogEntry entry, Reading reading, ChannelReading channel, SweepPoint point) {
        return List.of(
                Cell.of(entry.id()),
                new Cell.Time(reading.takenAt()),
                Cell.of(reading.stepId()),
                Cell.of(channel.channel()),
                Cell.of(point.driveDb()),
                Cell.of(point.outputVoltsRms()),
                Cell.of(point.powerWatts()),
                Cell.of(point.thdFRatio() * 100),
                Cell.of(point.thdPlusNoiseRRatio() * 100),
                Cell.of(point.clipped() ? "yes" : "no"),
                Cell.of(point.supplyVolts()),
                Cell.of(point.supplyAmps()),
                Cell.of(entry.voided() ? "yes" : "no"),
                Cell.of(point.captureSha256()));
    }

    /** Returns a row for each figure that a measurement found. */
    public static List<List<Cell>> figures(LogEntry entry) {
        return entry.figures().stream()
                .flatMap(figures -> figures.figures().stream().map(figure -> figure(entry, figures, figure)))
                .toList();
    }

    private static List<Cell> figure(LogEntry entry, MeasuredFigures figures, MeasuredFigure figure) {
        return List.of(
                Cell.of(entry.id()),
                new Cell.Time(entry.recordedAt()),
                new Cell.Time(figures.takenAt()),
                Cell.of(figures.stepId()),
                ReadingColumns.word(figures.mode()),
                Cell.of(figures.loadId()),
                Cell.of(figures.supplyVolts()),
                Cell.of(figures.measurementId() + " " + figures.measurementVersion()),
                Cell.of(figures.driver().id() + " " + figures.driver().version()),
                Cell.of(figure.id()),
                Cell.of(figure.channel()),
                Cell.of(figure.at()),
                Cell.of(figure.value()),
                Cell.of(figure.standardUncertainty()),
                Cell.of(figure.unit()),
                Cell.of(entry.voided() ? "yes" : "no"),
                Cell.of(figures.provenance().operator()),
                Cell.of(String.join(" ", figures.notes())),
                Cell.of(entry.hash()));
    }
}
