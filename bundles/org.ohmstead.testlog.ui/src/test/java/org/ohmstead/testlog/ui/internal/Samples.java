// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.search.EntryState;
import org.ohmstead.testlog.search.IndexedEntry;

/** Readings and entries to show. */
final class Samples {
    static final String CAPTURE = "ab12".repeat(16);
    static final String REVISION = "cd34".repeat(16);
    private static final Instant MORNING = Instant.parse("2026-03-02T09:00:00Z");

    private Samples() {}

    /** Channel A gives the power asked for, B 2 W less; the uncertainty is 0.5 W. */
    static Reading reading(String stepId, Mode mode, double loadOhms, double supplyVolts, double powerWatts) {
        List<ChannelReading> channels = mode == Mode.BRIDGED
                ? List.of(channel("A+B", loadOhms, supplyVolts, powerWatts))
                : List.of(
                        channel("A", loadOhms, supplyVolts, powerWatts),
                        channel("B", loadOhms, supplyVolts, powerWatts - 2));
        return new Reading(
                stepId,
                mode,
                "load-" + (int) loadOhms,
                loadOhms,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                MORNING.plusSeconds((long) (supplyVolts * 60)),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                channels,
                new Provenance(
                        REVISION,
                        "power-at-end-point",
                        "0.1.0",
                        "0.1.0",
                        "N. N.",
                        List.of(new InstrumentUsed(
                                "rec",
                                MeterQuantity.OUTPUT_VOLTS,
                                "Recorder",
                                Optional.of(LocalDate.of(2026, 1, 20)),
                                false)),
                        List.of(new CaptureUsed(CAPTURE, "a.wav", List.of(50.0, 50.0)))),
                List.of("The supply sagged."));
    }

    private static ChannelReading channel(String name, double loadOhms, double supplyVolts, double powerWatts) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                loadOhms,
                powerWatts,
                0.5,
                Math.sqrt(powerWatts * loadOhms),
                1000,
                0.01,
                supplyVolts,
                OptionalDouble.of(20),
                List.of(
                        new UncertaintyPart("output volts (meter)", 0.4, true),
                        new UncertaintyPart("interpolation between levels", 0.3, false)),
                List.of(),
                List.of());
    }

    /** Six readings: stereo into 4 and 2 ohm at two voltages each, bridged into 4 ohm at two. */
    static List<Reading> six() {
        List<Reading> readings = new ArrayList<>();
        readings.add(reading("stereo-4ohm-12V", Mode.STEREO, 4, 12, 70));
        readings.add(reading("stereo-4ohm-14V", Mode.STEREO, 4, 14, 95));
        readings.add(reading("stereo-2ohm-12V", Mode.STEREO, 2, 12, 120));
        readings.add(reading("stereo-2ohm-14V", Mode.STEREO, 2, 14, 162));
        readings.add(reading("bridged-4ohm-12V", Mode.BRIDGED, 4, 12, 240));
        readings.add(reading("bridged-4ohm-14V", Mode.BRIDGED, 4, 14, 325));
        return readings;
    }

    static LogEntry entry(long sequence, Reading reading) {
        return entry(sequence, EntryKind.READING, Optional.of(reading), Optional.empty(), Optional.empty());
    }

    static LogEntry voidedEntry(long sequence, Reading reading) {
        VoidNote note = new VoidNote("V0099", id(sequence, EntryKind.READING), "A lead was loose", "M. M.", MORNING);
        LogEntry entry = entry(sequence, reading);
        return new LogEntry(
                sequence,
                entry.kind(),
                entry.id(),
                entry.recordedAt(),
                entry.bodyText(),
                entry.previousHash(),
                entry.hash(),
                entry.reading(),
                entry.note(),
                entry.voids(),
                Optional.of(note));
    }

    static LogEntry note(long sequence, String text) {
        return entry(
                sequence, EntryKind.NOTE, Optional.empty(), Optional.of(new LogNote(text, "N. N.")), Optional.empty());
    }

    static LogEntry voiding(long sequence, String targetId) {
        VoidNote note = new VoidNote(id(sequence, EntryKind.VOID), targetId, "A lead was loose", "M. M.", MORNING);
        return entry(sequence, EntryKind.VOID, Optional.empty(), Optional.empty(), Optional.of(note));
    }

    static LogEntry unreadable(long sequence) {
        return entry(sequence, EntryKind.READING, Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static LogEntry entry(
            long sequence,
            EntryKind kind,
            Optional<Reading> reading,
            Optional<LogNote> note,
            Optional<VoidNote> voids) {
        return new LogEntry(
                sequence,
                kind,
                id(sequence, kind),
                MORNING.plusSeconds(sequence),
                "{}",
                String.format("%064x", sequence - 1),
                String.format("%064x", sequence),
                reading,
                note,
                voids,
                Optional.empty());
    }

    private static String id(long sequence, EntryKind kind) {
        return String.format("%s%04d", kind.idPrefix(), sequence);
    }

    /** Returns a reading that was taken with another meter. */
    static Reading withMeter(Reading reading, String meterId) {
        return withInstruments(
                reading,
                used -> new InstrumentUsed(meterId, used.quantity(), meterId, used.calibratedOn(), used.overdue()));
    }

    /** Returns a reading whose meters' calibration had run out. */
    static Reading overdue(Reading reading) {
        return withInstruments(
                reading,
                used -> new InstrumentUsed(used.meterId(), used.quantity(), used.name(), used.calibratedOn(), true));
    }

    private static Reading withInstruments(Reading reading, UnaryOperator<InstrumentUsed> change) {
        Provenance before = reading.provenance();
        List<InstrumentUsed> instruments =
                before.instruments().stream().map(change).toList();
        Provenance after = new Provenance(
                before.projectRevision(),
                before.procedureId(),
                before.procedureVersion(),
                before.softwareVersion(),
                before.operator(),
                instruments,
                before.captures());
        return new Reading(
                reading.stepId(),
                reading.mode(),
                reading.loadId(),
                reading.nominalLoadOhms(),
                reading.stimulus(),
                reading.endPoint(),
                reading.takenAt(),
                reading.conditions(),
                reading.channels(),
                after,
                reading.notes());
    }

    /** Returns the row of an entry, with what the index would know of it. */
    static LogRow row(LogEntry entry) {
        Optional<Reading> reading = entry.reading();
        Optional<ChannelReading> weakest = reading.map(Reading::weakestChannel);
        IndexedEntry indexed = new IndexedEntry(
                entry.chain(),
                entry.sequence(),
                entry.id(),
                entry.kind(),
                entry.recordedAt(),
                reading.map(Reading::takenAt),
                "",
                "",
                "",
                reading.map(each -> each.provenance().operator()).orElse(""),
                reading.map(Reading::mode),
                reading.map(Reading::loadId).orElse(""),
                figure(reading.map(Reading::nominalLoadOhms)),
                figure(weakest.map(ChannelReading::supplyVolts)),
                reading.map(Reading::stepId).orElse(""),
                "",
                "",
                figure(weakest.map(ChannelReading::powerWatts)),
                figure(weakest.map(ChannelReading::standardUncertaintyWatts)),
                figure(weakest.map(ChannelReading::thdFRatio)),
                weakest.map(ChannelReading::outcome),
                state(entry),
                reading.map(each -> each.provenance().instruments().stream().anyMatch(InstrumentUsed::overdue))
                        .orElse(false),
                entry.note().map(LogNote::text).orElse(""));
        return LogRow.of(indexed, Optional.of(entry));
    }

    private static OptionalDouble figure(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private static EntryState state(LogEntry entry) {
        if (!entry.readable()) {
            return EntryState.UNREADABLE;
        }
        if (entry.voided()) {
            return EntryState.VOIDED;
        }
        return switch (entry.kind()) {
            case READING, FIGURES -> EntryState.VALID;
            case NOTE -> EntryState.NOTE;
            case VOID, JOIN, ARCHIVE -> EntryState.ABOUT;
        };
    }
}
