// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ohmstead.model.SharedLog;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.units.text.Messages;

/** The words of the audit page. */
final class AuditTexts {
    private static final Messages TEXTS = Messages.of(AuditTexts.class);

    private static final int EXAMPLE_DIGITS = 8;

    private AuditTexts() {}

    /** Returns what a check may find, a sentence each. */
    static List<String> faults() {
        return Stream.of("changed", "moved", "cut", "unread")
                .map(kind -> TEXTS.text("audit.fault." + kind))
                .toList();
    }

    /** Returns what a hash is at the example of the log's own last entry; empty when there is none. */
    static String example(AuditFacts facts) {
        if (facts.last().isEmpty()) {
            return "";
        }
        ChainedRow last = facts.last().get(facts.last().size() - 1);
        return facts.last().size() > 1
                ? TEXTS.text(
                        "audit.example.after",
                        last.entryId(),
                        start(last.hash()),
                        start(last.previousHash()),
                        facts.last().get(0).entryId())
                : TEXTS.text("audit.example.first", last.entryId(), start(last.hash()));
    }

    static String start(String hash) {
        return hash.length() <= EXAMPLE_DIGITS ? hash : hash.substring(0, EXAMPLE_DIGITS) + "\u2026";
    }

    /** Returns what a chain is called in the tables. */
    static String name(ChainInfo chain) {
        return chain.label().isEmpty() ? TEXTS.text("audit.name.own") : chain.label() + ", " + chain.name();
    }

    static String chainsSentence(AuditFacts facts) {
        long joined = facts.chains().stream()
                .filter(chain -> !chain.label().isEmpty())
                .count();
        if (joined == 0) {
            return TEXTS.text("audit.chains.own");
        }
        return joined == 1 ? TEXTS.text("audit.chains.one") : TEXTS.text("audit.chains.many", Long.toString(joined));
    }

    /** Returns the rows of the table of chains: chain, entries, where it joined, head. */
    static List<List<String>> chainRows(AuditFacts facts) {
        List<List<String>> rows = new ArrayList<>();
        for (ChainInfo chain : facts.chains()) {
            rows.add(List.of(
                    name(chain), Long.toString(chain.entries()), joins(chain, facts.joins()), chain.headHash()));
        }
        return rows;
    }

    private static String joins(ChainInfo chain, List<LogEntry> joins) {
        if (chain.label().isEmpty()) {
            return TEXTS.text("audit.joins.own");
        }
        List<String> places = new ArrayList<>();
        for (LogEntry entry : joins) {
            Optional<JoinNote> note = entry.join();
            if (note.isPresent() && note.get().label().equals(chain.label())) {
                places.add(TEXTS.text(
                        note.get().who().isEmpty() ? "audit.joins.place" : "audit.joins.place.who",
                        entry.id(),
                        Figures.minute(entry.recordedAt()),
                        Long.toString(note.get().afterSequence() + 1),
                        Long.toString(note.get().lastSequence()),
                        note.get().who()));
            }
        }
        return String.join("; ", places);
    }

    /** Returns the heads as they are copied to be noted down. */
    static String headsToNote(AuditFacts facts, String when) {
        StringBuilder text = new StringBuilder(TEXTS.text("audit.copied", when)).append('\n');
        for (ChainInfo chain : facts.chains()) {
            if (chain.entries() > 0) {
                text.append(TEXTS.text(
                                chain.entries() == 1 ? "audit.copied.one" : "audit.copied.many",
                                name(chain),
                                Long.toString(chain.entries()),
                                chain.headHash()))
                        .append('\n');
            }
        }
        return text.toString();
    }

    static String archives(AuditFacts facts) {
        if (facts.archives().isEmpty()) {
            return TEXTS.text("audit.archives.none");
        }
        List<String> lines = new ArrayList<>();
        for (LogEntry entry : facts.archives()) {
            ArchiveNote note = entry.archive().orElseThrow();
            int taken = note.capturesTakenOut().size();
            String line = TEXTS.text(
                    taken == 0 ? "audit.archive.all" : taken == 1 ? "audit.archive.one" : "audit.archive.many",
                    entry.id(),
                    Figures.minute(entry.recordedAt()),
                    note.fileName(),
                    Figures.shortHash(note.fileSha256()),
                    Figures.shortHash(note.headHash()),
                    Integer.toString(taken));
            lines.add(note.who().isEmpty() ? line : TEXTS.text("audit.archive.by", line, note.who()));
        }
        return String.join("\n", lines);
    }

    /**
     * Returns how the log stands to the laboratory's shared one.
     *
     * @param shared what the project says of it
     * @param state how far the hand-over is, as whole sentences
     */
    static String shared(Optional<SharedLog> shared, String state) {
        if (shared.isEmpty()) {
            return TEXTS.text("audit.shared.none");
        }
        String name = shared.get().bench();
        return name.isBlank()
                ? TEXTS.text("audit.shared.unnamed", state)
                : TEXTS.text("audit.shared.named", state, name);
    }
}
