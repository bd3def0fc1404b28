// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.SharedLog;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.chain.ChainedRow;

/** The words of the audit page. */
final class AuditTexts {
    static final String CHAIN =
            "Each entry of the log carries a fingerprint, its hash: 64 digits worked out (SHA-256) from"
                    + " everything that the entry says, from its number, and from the hash of the entry before it. Change one"
                    + " character anywhere and the hash no longer fits the entry; change the hash as well and the next entry no"
                    + " longer fits. So the entries hold one another in place like the links of a chain, back to the first.";

    static final String LIMITS =
            "Nobody has to be trusted for this and no password is in it: whoever has the log can work"
                    + " the hashes out again. One thing a chain cannot show by itself is that its end was cut off, because every link"
                    + " that is left still fits. For that the head, the hash of the last entry, is noted in other places: on each"
                    + " published sheet, in archives, in the other bench's log when two are joined, and by this computer. A head"
                    + " written into a paper notebook does as well.";

    static final List<String> FAULTS = List.of(
            "An entry was changed: its hash does not fit what it says. Its id is named.",
            "An entry was taken out, put in, or two changed places: the numbers do not run on, or an entry does not name the"
                    + " hash of the one before it. The first entry that does not fit is named; what follows it cannot be"
                    + " judged by the chain any more.",
            "The end was cut off: what is left is whole in itself, but a head that was noted earlier is not in it.",
            "A void takes back what does not exist, or an entry cannot be read: it is named.");

    static final String WITNESS =
            "This computer notes by itself, in the search index beside the log, the furthest head that it has"
                    + " seen. Each check compares it: a log from which the end was cut since then is found out here, though not by"
                    + " somebody who has only the log.";

    static final String HEADS =
            "Note these down now and then, with the date. Later, write one into the field above and verify:"
                    + " the log must still hold it.";

    private static final int EXAMPLE_DIGITS = 8;

    private AuditTexts() {}

    /** Returns what a hash is at the example of the log's own last entry; empty when there is none. */
    static String example(AuditFacts facts) {
        if (facts.last().isEmpty()) {
            return "";
        }
        ChainedRow last = facts.last().get(facts.last().size() - 1);
        String before = facts.last().size() > 1
                ? "the hash " + start(last.previousHash()) + " of "
                        + facts.last().get(0).entryId() + " before it"
                : "64 zeros, since nothing is before it";
        return "In this log: " + last.entryId() + " has the hash " + start(last.hash())
                + ", worked out from its own content" + " and from " + before + ".";
    }

    static String start(String hash) {
        return hash.length() <= EXAMPLE_DIGITS ? hash : hash.substring(0, EXAMPLE_DIGITS) + "\u2026";
    }

    /** Returns what a chain is called in the tables. */
    static String name(ChainInfo chain) {
        return chain.label().isEmpty() ? "This log" : chain.label() + ", " + chain.name();
    }

    static String chainsSentence(AuditFacts facts) {
        long joined = facts.chains().stream()
                .filter(chain -> !chain.label().isEmpty())
                .count();
        if (joined == 0) {
            return "No other bench's log was joined to this one: it holds one chain.";
        }
        return "This log also holds "
                + (joined == 1 ? "the chain of another bench" : "the chains of " + joined + " other benches")
                + ", entry by entry as they were written there. The entry that joined a chain keeps its head, so that the"
                + " joined entries are held in place by this log's chain too.";
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
            return "its own";
        }
        List<String> places = new ArrayList<>();
        for (LogEntry entry : joins) {
            Optional<JoinNote> note = entry.join();
            if (note.isPresent() && note.get().label().equals(chain.label())) {
                places.add(entry.id() + " on " + Figures.minute(entry.recordedAt()) + " UTC ("
                        + (note.get().afterSequence() + 1) + " to " + note.get().lastSequence()
                        + (note.get().who().isEmpty()
                                ? ""
                                : ", by " + note.get().who()) + ")");
            }
        }
        return String.join("; ", places);
    }

    /** Returns the heads as they are copied to be noted down. */
    static String headsToNote(AuditFacts facts, String when) {
        StringBuilder text = new StringBuilder("Heads of the test log on " + when + " UTC\n");
        for (ChainInfo chain : facts.chains()) {
            if (chain.entries() > 0) {
                text.append(name(chain))
                        .append(", ")
                        .append(chain.entries())
                        .append(chain.entries() == 1 ? " entry: " : " entries: ")
                        .append(chain.headHash())
                        .append('\n');
            }
        }
        return text.toString();
    }

    static String archives(AuditFacts facts) {
        if (facts.archives().isEmpty()) {
            return "The project was not put away in an archive yet.";
        }
        List<String> lines = new ArrayList<>();
        for (LogEntry entry : facts.archives()) {
            ArchiveNote note = entry.archive().orElseThrow();
            int taken = note.capturesTakenOut().size();
            lines.add(entry.id() + ", " + Figures.minute(entry.recordedAt()) + " UTC: " + note.fileName() + ", SHA-256 "
                    + Figures.shortHash(note.fileSha256()) + ", log up to the head "
                    + Figures.shortHash(note.headHash())
                    + (taken == 0
                            ? "; all captures stayed here"
                            : "; " + taken + (taken == 1 ? " capture is" : " captures are") + " in it only")
                    + (note.who().isEmpty() ? "" : "; by " + note.who()));
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
            return "The project keeps its log only in its own folder. A laboratory with several benches can have each hand its"
                    + " entries over to one shared log; the project's page Shared log says where it is.";
        }
        String name = shared.get().bench();
        return "This bench hands its entries over to the laboratory's shared log"
                + (name.isBlank() ? "" : " under the name " + name)
                + ", as a chain of its own. What it adds is kept here first, so that nothing is lost while the server cannot be"
                + " reached. " + state;
    }
}
