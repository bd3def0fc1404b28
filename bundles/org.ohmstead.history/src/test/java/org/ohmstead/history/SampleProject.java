// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.VoidNote;

/** A made-up project, and entries of its log. */
public final class SampleProject {
    /** Some state of the project. */
    public static final String REVISION = "cd".repeat(32);

    private SampleProject() {}

    /** Returns a project with one step and these check standards. */
    public static Project with(CheckStandard... standards) {
        LoadBranch four = new LoadBranch(4, 0.004, 0, "");
        return new Project(
                        "Sample",
                        new Amplifier(
                                "Made-up Workshop",
                                "M-1",
                                "0001",
                                2,
                                SupplyType.UNREGULATED,
                                List.of(new LowestLoad(Mode.STEREO, 2)),
                                List.of(),
                                OptionalDouble.empty(),
                                List.of(),
                                ""),
                        new Bench(
                                "Bench 1",
                                new Supply("Supply", 0, 16, 100),
                                new Cable(35, 3, OptionalDouble.empty()),
                                List.of(new Meter(
                                        "m1",
                                        MeterQuantity.OUTPUT_VOLTS,
                                        "Recorder",
                                        "",
                                        new Accuracy(0.002, 0.01, 0.001, 0),
                                        Optional.empty(),
                                        Optional.of(LocalDate.of(2027, 1, 31)),
                                        "")),
                                List.of(),
                                OptionalDouble.of(23)),
                        List.of(new BenchLoad("4ohm", 4, List.of(four, four), 200)),
                        List.of(new Step(
                                "s1",
                                Mode.STEREO,
                                "4ohm",
                                14.4,
                                new Stimulus.ContinuousSine(1000),
                                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                                false)),
                        new SheetSettings("", "", 0.95, ""))
                .withCheckStandards(List.of(standards));
    }

    /** Returns a check standard whose values are typed in, with no reference and no reminder. */
    public static CheckStandard typedIn(String id, int baselineCount) {
        return new CheckStandard(
                id,
                "Resistor " + id,
                "",
                "resistance",
                "",
                "ohm",
                baselineCount,
                0.01,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0);
    }

    /** Returns an entry of figures. */
    public static LogEntry entry(int number, MeasuredFigures figures) {
        return entry(number, "", Optional.empty(), Optional.of(figures));
    }

    /** Returns an entry of a reading. */
    public static LogEntry entry(int number, Reading reading) {
        return entry(number, "", Optional.of(reading), Optional.empty());
    }

    /** Returns the same entry as it would come with another chain. */
    public static LogEntry joined(String label, LogEntry entry) {
        return entry((int) entry.sequence(), label, entry.reading(), entry.figures());
    }

    private static LogEntry entry(
            int number, String chain, Optional<Reading> reading, Optional<MeasuredFigures> figures) {
        EntryKind kind = reading.isPresent() ? EntryKind.READING : EntryKind.FIGURES;
        String id = String.format("%s%c%04d", chain.isEmpty() ? "" : chain + "/", kind.idPrefix(), number);
        return new LogEntry(
                number,
                kind,
                id,
                Instant.parse("2026-01-01T00:00:00Z").plusSeconds(number),
                "{}",
                "00".repeat(32),
                "11".repeat(32),
                reading,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                figures,
                Optional.empty(),
                Optional.empty(),
                chain);
    }

    /** Returns the same entry taken back. */
    public static LogEntry voided(LogEntry entry) {
        return new LogEntry(
                entry.sequence(),
                entry.kind(),
                entry.id(),
                entry.recordedAt(),
                entry.bodyText(),
                entry.previousHash(),
                entry.hash(),
                entry.reading(),
                entry.note(),
                entry.voids(),
                Optional.of(new VoidNote("V0001", entry.id(), "lead was loose", "N. N.", entry.recordedAt())),
                entry.figures(),
                entry.join(),
                entry.archive(),
                entry.chain());
    }

    /** Returns figures of the step s1. */
    public static MeasuredFigures figures(String takenAt, String operator, BenchKind kind, MeasuredFigure... figures) {
        return new MeasuredFigures(
                "s1",
                Mode.STEREO,
                "4ohm",
                14.4,
                Instant.parse(takenAt),
                new DriverUsed("some", "1", kind, Map.of()),
                Map.of(),
                List.of(figures),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                new Provenance(REVISION, "org.example.some", "1", "0.1.0", operator, List.of(), List.of()),
                List.of());
    }
}
