// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.JoinReport;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

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
            return new JoinReport(0, Optional.empty(), said("joins.nothing", other, name));
        }
        StringBuilder text = new StringBuilder();
        long added = 0;
        for (LogEntry entry : joins) {
            JoinNote note = entry.join().orElseThrow();
            added += note.count();
            text.append(text.isEmpty() ? "" : " ").append(sentence(entry, note));
        }
        if (!voided.isEmpty()) {
            text.append(' ').append(said("joins.voids", String.join(", ", voided)));
        }
        return new JoinReport(Math.toIntExact(added), Optional.of(joins.get(joins.size() - 1)), text.toString());
    }

    private static String sentence(LogEntry entry, JoinNote note) {
        String key = (note.count() == 1 ? "joins.one" : "joins.many") + (note.afterSequence() == 0 ? "" : ".behind");
        return said(key, note.count(), note.name(), note.label(), entry.id(), note.afterSequence());
    }

    private static String said(String key, Object... arguments) {
        return Said.of(Messages.of(JoinSentences.class), key, arguments).text();
    }
}
