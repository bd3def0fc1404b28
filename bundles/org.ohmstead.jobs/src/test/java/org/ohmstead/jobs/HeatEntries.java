// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;

/** Entries of the hot step, made at times that a test chooses. */
final class HeatEntries {
    private HeatEntries() {}

    static LogEntry entry(long sequence, Instant recordedAt, OptionalDouble caseCelsius, String chain) {
        return new LogEntry(
                sequence,
                EntryKind.FIGURES,
                (chain.isEmpty() ? "" : chain + "/") + "F" + sequence,
                recordedAt,
                "{}",
                "",
                "",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(figures(BenchKind.REAL, recordedAt, caseCelsius)),
                Optional.empty(),
                Optional.empty(),
                chain);
    }

    static MeasuredFigures figures(BenchKind kind, Instant takenAt, OptionalDouble caseCelsius) {
        return new MeasuredFigures(
                OneLump.HOT_STEP,
                Mode.STEREO,
                "4ohm",
                14.4,
                takenAt,
                new DriverUsed("org.example.bench", "1.0.0", kind, Map.of()),
                Map.of(),
                List.of(new MeasuredFigure("power", "A", "", 90, "W", OptionalDouble.empty())),
                new Conditions(OptionalDouble.empty(), caseCelsius),
                new Provenance("ab", "org.ohmstead.power-at-end-point", "1.0.0", "0.1.0", "", List.of(), List.of()),
                List.of());
    }
}
