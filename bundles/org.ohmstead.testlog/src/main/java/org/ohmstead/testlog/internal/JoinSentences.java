// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.JoinReport;
import org.ohmstead.testlog.LogEntry;

/** Says what came of joining a log. */
public final class JoinSentences {
    private JoinSentences() {}

    /**
     * Returns the report.
     *
     * @param joins the entries that say what was joined
     * @param other file of the other log
     * @param name of its bench
     * @param voided ids of entries that both logs have and only the other one voids
     */
    public static JoinReport report(List<LogEntry> joins, Path other, String name, List<String> voided) {
        if (joins.isEmpty()) {
            return new JoinReport(
                    0,
                    Optional.empty(),
                    "Nothing was joined: all entries of the log " + other + " of " + name
                            + " are in this log already.");
        }
        StringBuilder text = new StringBuilder();
        long added = 0;
        for (LogEntry entry : joins) {
            JoinNote note = entry.join().orElseThrow();
            added += note.count();
            text.append(text.isEmpty() ? "" : " ").append(sentence(entry, note));
        }
        if (!voided.isEmpty()) {
            text.append(" The other log voids ")
                    .append(String.join(", ", voided))
                    .append(
                            ", which this log has too and which still counts here; void it here as well if it is wrong.");
        }
        return new JoinReport(Math.toIntExact(added), Optional.of(joins.get(joins.size() - 1)), text.toString());
    }

    private static String sentence(LogEntry entry, JoinNote note) {
        String entries = note.count() == 1 ? "1 entry" : note.count() + " entries";
        String place = note.afterSequence() == 0 ? "" : " behind number " + note.afterSequence();
        return String.format(
                Locale.ROOT,
                "%s of %s%s came as chain %s; the entry %s holds the head of that chain.",
                entries,
                note.name(),
                place,
                note.label(),
                entry.id());
    }
}
