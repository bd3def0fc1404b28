// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.JoinNote;

/** Whether a joined chain is what the join entries of the log's own chain say. */
final class JoinCheck {
    /** Takes what is wrong with the chain, and the number of the entry where it shows; 0 for all of it. */
    interface Broken {
        void at(long sequence, String what);
    }

    private final ChainInfo chain;
    private final List<JoinNote> notes;
    private final Broken broken;
    private int next;
    private boolean begun;
    private long lastSequence;

    JoinCheck(ChainInfo chain, List<JoinNote> notes, Broken broken) {
        this.chain = chain;
        this.notes = notes;
        this.broken = broken;
        checkNotes();
    }

    private void checkNotes() {
        if (notes.isEmpty()) {
            broken.at(0, "is there, although the log does not say that it was joined");
            return;
        }
        boolean named = notes.stream().allMatch(note -> note.label().equals(chain.label()));
        if (!named || !notes.get(0).name().equals(chain.name())) {
            broken.at(0, "has another label or name than the log says");
        }
        for (int at = 1; at < notes.size(); at++) {
            if (notes.get(at).afterSequence() != notes.get(at - 1).lastSequence()) {
                broken.at(0, "was joined in parts that do not continue each other");
            }
        }
    }

    void partsFromNothing() {
        broken.at(chain.firstSequence(), "parts from an entry that is not in the log");
    }

    void see(RawRow row) {
        if (!begun) {
            begun = true;
            boolean asSaid = notes.isEmpty() || notes.get(0).afterSequence() + 1 == row.sequence;
            if (!row.hashText().equals(chain.chain()) || !asSaid) {
                broken.at(
                        row.sequence,
                        "begins with another entry, number " + row.sequence + ", than when it was joined");
            }
        }
        if (next < notes.size() && notes.get(next).lastSequence() == row.sequence) {
            if (!notes.get(next).headHash().equals(row.hashText())) {
                broken.at(row.sequence, "has another entry number " + row.sequence + " than when it was joined");
            }
            next++;
        }
        lastSequence = row.sequence;
    }

    void finish() {
        if (next < notes.size()) {
            broken.at(
                    lastSequence + 1,
                    "ends with number " + lastSequence + ", although entries up to number "
                            + notes.get(notes.size() - 1).lastSequence() + " were joined");
        } else if (!notes.isEmpty()
                && lastSequence > notes.get(notes.size() - 1).lastSequence()) {
            long last = notes.get(notes.size() - 1).lastSequence();
            broken.at(last + 1, "has entries behind number " + last + ", which the log does not say were joined");
        }
    }
}
