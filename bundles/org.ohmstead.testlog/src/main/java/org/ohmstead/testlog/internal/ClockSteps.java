// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.ohmstead.testlog.ClockStep;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;

/** Looks where the times of a chain's entries run backwards. */
public final class ClockSteps {

    private static final Messages TEXTS = Messages.of(ClockSteps.class);
    private static final int MOST_TOLD = VerifyReport.MOST_CLOCK_STEPS;
    private static final Duration LEEWAY = Duration.ofSeconds(TestLog.BUSY_SECONDS);

    private final String label;
    private final List<ClockStep> told = new ArrayList<>();
    private byte[] last;
    private long count;

    /** Begins a chain with a label; a log's own has none. */
    ClockSteps(String label) {
        this(label, new byte[0]);
    }

    private ClockSteps(String label, byte[] last) {
        this.label = label;
        this.last = last;
    }

    /** Returns one for a chain that goes on behind the last row. */
    ClockSteps parting(String newLabel) {
        return new ClockSteps(newLabel, last);
    }

    /** Looks at the next row. */
    void see(RawRow row) {
        byte[] before = last;
        last = row.recordedAt;
        // Usual times are in the order of their bytes, but for fractions of one second; others are looked at closely.
        if (Arrays.compare(row.recordedAt, before) < 0 && wentBack(RawRow.text(before), RawRow.text(row.recordedAt))) {
            count++;
            if (told.size() == MOST_TOLD) {
                told.remove(MOST_TOLD - 1); // the newest stays news
            }
            String id = EntryBodies.idWithin(label, RawRow.text(row.entryId));
            told.add(new ClockStep(
                    row.sequence,
                    id,
                    TEXTS.text(
                            label.isEmpty() ? "clock.own" : "clock.joined",
                            id,
                            Long.toString(row.sequence),
                            RawRow.text(row.recordedAt),
                            RawRow.text(before),
                            label)));
        }
    }

    /** Returns the first of the places and the last, in their order. */
    public List<ClockStep> told() {
        return List.copyOf(told);
    }

    /** Returns how many there are. */
    public long count() {
        return count;
    }

    /** Returns whether a time lies so far before another that the clock was set back; not when either is no time. */
    static boolean wentBack(String before, String behind) {
        try {
            return Duration.between(Instant.parse(behind), Instant.parse(before))
                            .compareTo(LEEWAY)
                    > 0;
        } catch (DateTimeParseException noTime) {
            return false;
        }
    }

    /** Returns what to tell who has just added an entry. */
    static String said(String before, String entryId, String behind) {
        return TEXTS.text("clock.added", entryId, behind, before);
    }
}
