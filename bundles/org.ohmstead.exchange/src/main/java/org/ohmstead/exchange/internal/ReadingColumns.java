// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.testlog.LogEntry;

/** The table of readings: a row for each channel of each reading. Headings name the unit. */
public final class ReadingColumns {
    /** The headings of every table. */
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

    /** The headings that follow in a table of readings that name their specimen. */
    public static final List<String> SPECIMEN_HEADINGS = List.of("amplifier", "serial_number", "bench");

    private ReadingColumns() {}

    /** Returns the headings of a table with or without the specimen. */
    public static List<String> headings(boolean withSpecimen) {
        return withSpecimen
                ? Stream.concat(HEADINGS.stream(), SPECIMEN_HEADINGS.stream()).toList()
                : HEADINGS;
    }

    /** Returns the rows of an entry; none when it is no reading. */
    public static List<List<Cell>> rows(LogEntry entry, boolean withSpecimen) {
        return entry.reading().stream()
                .flatMap(reading ->
                        reading.channels().stream().map(channel -> row(entry, reading, channel, withSpecimen)))
                .toList();
    }

    private static List<Cell> row(LogEntry entry, Reading reading, ChannelReading channel, boolean withSpecimen) {
        List<Cell> cells = new ArrayList<>(HEADINGS.size() + SPECIMEN_HEADINGS.size());
        cells.add(Cell.of(entry.id()));
        cells.add(new Cell.Time(entry.recordedAt()));
        cells.add(new Cell.Time(reading.takenAt()));
        addSetting(cells, reading, channel);
        addFigures(cells, reading, channel);
        addRecord(cells, entry, reading);
        if (withSpecimen) {
            Optional<Specimen> specimen = reading.provenance().specimen();
            cells.add(Cell.of(specimen.map(Specimen::amplifier).orElse("")));
            cells.add(Cell.of(specimen.map(Specimen::serialNumber).orElse("")));
            cells.add(Cell.of(specimen.map(Specimen::bench).orElse("")));
        }
        return cells;
    }

    private static void addSetting(List<Cell> cells, Reading reading, ChannelReading channel) {
        cells.add(Cell.of(reading.stepId()));
        cells.add(word(reading.mode()));
        cells.add(Cell.of(reading.loadId()));
        cells.add(Cell.of(reading.nominalLoadOhms()));
        cells.add(Cell.of(channel.loadOhms()));
        Stimulus stimulus = reading.stimulus();
        cells.add(word(stimulus.powerKind()));
        cells.add(Cell.of(stimulus.frequencyHz()));
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            cells.add(Cell.of(burst.onSeconds()));
            cells.add(Cell.of(burst.periodSeconds()));
            cells.add(Cell.of(burst.lowLevelDb()));
        } else {
            cells.addAll(List.of(Cell.BLANK, Cell.BLANK, Cell.BLANK));
        }
        addEndPoint(cells, reading.endPoint());
    }

    private static void addEndPoint(List<Cell> cells, EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            cells.addAll(List.of(word(limit.measure()), Cell.of(limit.ratio() * 100), Cell.BLANK));
        } else if (endPoint instanceof EndPoint.FixedLevel level) {
            cells.addAll(List.of(Cell.of("fixed_level"), Cell.BLANK, Cell.of(level.driveDb())));
        } else {
            cells.addAll(List.of(Cell.of("clipping_onset"), Cell.BLANK, Cell.BLANK));
        }
    }

    private static void addFigures(List<Cell> cells, Reading reading, ChannelReading channel) {
        cells.add(Cell.of(channel.channel()));
        cells.add(word(channel.outcome()));
        cells.add(Cell.of(channel.powerWatts()));
        cells.add(Cell.of(channel.standardUncertaintyWatts()));
        cells.add(Cell.of(channel.outputVoltsRms()));
        cells.add(Cell.of(channel.thdFRatio() * 100));
        cells.add(Cell.of(channel.supplyVolts()));
        cells.add(Cell.of(channel.supplyAmps()));
        cells.add(Cell.of(channel.endPointDriveDb()));
        cells.add(Cell.of(reading.conditions().ambientCelsius()));
        cells.add(Cell.of(reading.conditions().caseCelsius()));
    }

    private static void addRecord(List<Cell> cells, LogEntry entry, Reading reading) {
        cells.add(Cell.of(entry.voided() ? "yes" : "no"));
        cells.add(Cell.of(entry.voidedBy().map(note -> note.reason()).orElse("")));
        cells.add(Cell.of(entry.voidedBy().map(note -> note.voidId()).orElse("")));
        cells.add(Cell.of(String.join(" ", reading.notes())));
        Provenance provenance = reading.provenance();
        cells.add(
                Cell.of(provenance.captures().stream().map(CaptureUsed::sha256).collect(Collectors.joining(" "))));
        cells.add(Cell.of(provenance.operator()));
        cells.add(Cell.of(provenance.procedureId() + " " + provenance.procedureVersion()));
        cells.add(Cell.of(provenance.softwareVersion()));
        cells.add(Cell.of(provenance.projectRevision()));
        cells.add(Cell.of(entry.hash()));
    }

    static Cell word(Enum<?> value) {
        return Cell.of(value.name().toLowerCase(Locale.ROOT));
    }
}
