// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Said;

/** What of a plan is in the log already. */
final class PlanLog {
    private static final int SHOWN_DIGITS = 12;

    private final PlanSetup setup;
    private final TestLog log;

    PlanLog(PlanSetup setup, TestLog log) {
        this.setup = setup;
        this.log = log;
    }

    /** Returns how each item stands by the log alone. */
    List<ItemState> states() throws TestLogException {
        List<LogEntry> entries = log.entries(LogQuery.everything());
        return setup.items().stream().map(item -> state(item, entries)).toList();
    }

    private ItemState state(PlanItem item, List<LogEntry> entries) {
        List<String> ids = new ArrayList<>();
        Optional<String> skipped = Optional.empty();
        for (int at = 0; at < entries.size(); at++) {
            LogEntry entry = entries.get(at);
            int entryAt = at;
            if (entry.voided()) {
                continue;
            }
            boolean counts =
                    entry.reading().filter(reading -> isOf(reading, item)).isPresent()
                            || entry.figures()
                                    .filter(figures -> isOf(figures, item))
                                    .filter(figures -> !withVoidedReading(entries, entryAt, item))
                                    .isPresent();
            if (counts) {
                ids.add(entry.id());
            }
            skipped = entry.note()
                    .map(LogNote::text)
                    .flatMap(text -> reasonSkipped(text, item))
                    .or(keep(skipped));
        }
        if (!ids.isEmpty()) {
            return new ItemState(item, ItemState.Status.DONE, ids, "");
        }
        return skipped.map(reason -> new ItemState(item, ItemState.Status.SKIPPED, List.of(), reason))
                .orElse(new ItemState(item, ItemState.Status.PENDING, List.of(), ""));
    }

    /** Logs a result: the reading of power first, when there is one, then the figures. */
    List<LogEntry> append(RunOutcome.Finished finished, Instant now) throws TestLogException {
        LogRecords records = new LogRecords(
                finished.record(),
                setup,
                finished.further().stream().map(Said::kept).toList(),
                now);
        Optional<Reading> reading = records.reading();
        MeasuredFigures figures = records.figures();
        return reading.isPresent() ? log.append(reading.get(), figures) : List.of(log.append(figures));
    }

    private static Supplier<Optional<String>> keep(Optional<String> value) {
        return () -> value;
    }

    private boolean isOf(Reading reading, PlanItem item) {
        return reading.stepId().equals(item.stepId()) && isOf(reading.provenance(), item);
    }

    private boolean isOf(MeasuredFigures figures, PlanItem item) {
        return figures.stepId().equals(item.stepId()) && isOf(figures.provenance(), item);
    }

    private boolean isOf(Provenance provenance, PlanItem item) {
        return provenance.projectRevision().equals(setup.projectRevision())
                && provenance.procedureId().equals(item.measurementId());
    }

    /** A run that gave a reading logged its figures directly behind it; without the reading they are not the result. */
    private boolean withVoidedReading(List<LogEntry> entries, int figuresAt, PlanItem item) {
        if (figuresAt == 0) {
            return false;
        }
        LogEntry before = entries.get(figuresAt - 1);
        return before.voided()
                && before.recordedAt().equals(entries.get(figuresAt).recordedAt())
                && before.reading().filter(reading -> isOf(reading, item)).isPresent();
    }

    static RunOutcome.Failed unwritable(PlanItem item, RunOutcome outcome, IllegalArgumentException why) {
        Said sentence = Sentences.of("unwritable", item.measurementId(), Contained.words(why));
        return new RunOutcome.Failed(PluginKind.MEASUREMENT, item.measurementId(), true, sentence, outcome.further());
    }

    /** Returns the text of a note that says how an item ended that gave no result. */
    static String failureText(PlanItem item, RunOutcome outcome) {
        List<String> all = new ArrayList<>(List.of(outcome.said().kept()));
        outcome.further().forEach(remark -> all.add(remark.kept()));
        return "Step \"" + item.stepId() + "\", " + item.measurementId() + ": " + String.join(" ", all);
    }

    /** Returns the text of a note that says that an item is left out. */
    String skipText(PlanItem item, String reason) {
        return skipStart(item) + reason.strip();
    }

    private String skipStart(PlanItem item) {
        String revision = setup.projectRevision();
        return "Skipped: step \"" + item.stepId() + "\", " + item.measurementId() + ", plan "
                + revision.substring(0, Math.min(SHOWN_DIGITS, revision.length())) + ". ";
    }

    private Optional<String> reasonSkipped(String text, PlanItem item) {
        String start = skipStart(item);
        return text.startsWith(start) ? Optional.of(text.substring(start.length())) : Optional.empty();
    }
}
