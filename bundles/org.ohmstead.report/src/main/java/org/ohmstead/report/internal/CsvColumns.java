// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.testlog.LogEntry;

/** The columns of the exported log. */
public final class CsvColumns {
    /** The headings, each with the unit of its column. */
    public static final List<String> HEADINGS = List.of(
            "entry",
            "recorded_at_utc",
            "taken_at_utc",
            "step",
            "mode",
            "load",
            "nominal_load_ohm",
            "load_ohm",
            "stimulus",
            "frequency_Hz",
            "burst_on_s",
            "burst_period_s",
            "burst_low_level_dB",
            "end_point",
            "end_point_limit_percent",
            "end_point_drive_dB",
            "channel",
            "outcome",
            "power_W",
            "power_std_uncertainty_W",
            "output_Vrms",
            "thd_f_percent",
            "supply_V",
            "supply_A",
            "drive_dB",
            "ambient_degC",
            "case_degC",
            "voided",
            "void_reason",
            "void_entry",
            "notes",
            "captures_sha256",
            "operator",
            "procedure",
            "software_version",
            "project_revision",
            "entry_hash");

    private static final String FORMULA_BEGINNINGS = "=+-@\t\r\n";

    private CsvColumns() {}

    /** Returns the cells of one channel of a reading, in the order of {@link #HEADINGS}. */
    public static List<String> cells(LogEntry entry, Reading reading, ChannelReading channel) {
        List<String> cells = new ArrayList<>(HEADINGS.size());
        cells.add(text(entry.id()));
        cells.add(entry.recordedAt().toString());
        cells.add(reading.takenAt().toString());
        addSetting(cells, reading, channel);
        addFigures(cells, reading, channel);
        addRecord(cells, entry, reading);
        return cells;
    }

    private static void addSetting(List<String> cells, Reading reading, ChannelReading channel) {
        cells.add(text(reading.stepId()));
        cells.add(word(reading.mode()));
        cells.add(text(reading.loadId()));
        cells.add(number(reading.nominalLoadOhms()));
        cells.add(number(channel.loadOhms()));
        Stimulus stimulus = reading.stimulus();
        cells.add(word(stimulus.powerKind()));
        cells.add(number(stimulus.frequencyHz()));
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            cells.add(number(burst.onSeconds()));
            cells.add(number(burst.periodSeconds()));
            cells.add(number(burst.lowLevelDb()));
        } else {
            cells.addAll(List.of("", "", ""));
        }
        addEndPoint(cells, reading.endPoint());
    }

    private static void addEndPoint(List<String> cells, EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            cells.addAll(List.of(word(limit.measure()), number(limit.ratio() * 100), ""));
        } else if (endPoint instanceof EndPoint.FixedLevel level) {
            cells.addAll(List.of("fixed_level", "", number(level.driveDb())));
        } else {
            cells.addAll(List.of("clipping_onset", "", ""));
        }
    }

    private static void addFigures(List<String> cells, Reading reading, ChannelReading channel) {
        cells.add(text(channel.channel()));
        cells.add(word(channel.outcome()));
        cells.add(number(channel.powerWatts()));
        cells.add(number(channel.standardUncertaintyWatts()));
        cells.add(number(channel.outputVoltsRms()));
        cells.add(number(channel.thdFRatio() * 100));
        cells.add(number(channel.supplyVolts()));
        cells.add(number(channel.supplyAmps()));
        cells.add(number(channel.endPointDriveDb()));
        cells.add(number(reading.conditions().ambientCelsius()));
        cells.add(number(reading.conditions().caseCelsius()));
    }

    private static void addRecord(List<String> cells, LogEntry entry, Reading reading) {
        cells.add(entry.voided() ? "yes" : "no");
        cells.add(entry.voidedBy().map(note -> text(note.reason())).orElse(""));
        cells.add(entry.voidedBy().map(note -> text(note.voidId())).orElse(""));
        cells.add(text(String.join(" ", reading.notes())));
        Provenance provenance = reading.provenance();
        cells.add(provenance.captures().stream().map(CaptureUsed::sha256).collect(Collectors.joining(" ")));
        cells.add(text(provenance.operator()));
        cells.add(text(provenance.procedureId() + " " + provenance.procedureVersion()));
        cells.add(text(provenance.softwareVersion()));
        cells.add(text(provenance.projectRevision()));
        cells.add(text(entry.hash()));
    }

    /** Puts an apostrophe before a text that a spreadsheet would take for a formula. */
    static String text(String text) {
        return !text.isEmpty() && FORMULA_BEGINNINGS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    private static String number(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return exact.toPlainString();
    }
}
