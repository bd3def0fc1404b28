// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.units.text.Messages;

/** Whether a joined chain is what the join entries of the log's own chain say. */
final class JoinCheck {
    private static final Messages TEXTS = Messages.of(JoinCheck.class);

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
            broken.at(0, TEXTS.text("joined.unsaid"));
            return;
        }
        boolean named = notes.stream().allMatch(note -> note.label().equals(chain.label()));
        if (!named || !notes.get(0).name().equals(chain.name())) {
            broken.at(0, TEXTS.text("joined.label"));
        }
        for (int at = 1; at < notes.size(); at++) {
            if (notes.get(at).afterSequence() != notes.get(at - 1).lastSequence()) {
                broken.at(0, TEXTS.text("joined.parts"));
            }
        }
    }

    void partsFromNothing() {
        broken.at(chain.firstSequence(), TEXTS.text("joined.nowhere"));
    }

    void see(RawRow row) {
        if (!begun) {
            begun = true;
            boolean asSaid = notes.isEmpty() || notes.get(0).afterSequence() + 1 == row.sequence;
            if (!row.hashText().equals(chain.chain()) || !asSaid) {
                broken.at(row.sequence, TEXTS.text("joined.begins", Long.toString(row.sequence)));
            }
        }
        if (next < notes.size() && notes.get(next).lastSequence() == row.sequence) {
            if (!notes.get(next).headHash().equals(row.hashText())) {
                broken.at(row.sequence, TEXTS.text("joined.other", Long.toString(row.sequence)));
            }
            next++;
        }
        lastSequence = row.sequence;
    }

    void finish() {
        if (next < notes.size()) {
            broken.at(
                    lastSequence + 1,
                    TEXTS.text(
                            "joined.short",
                            Long.toString(lastSequence),
                            Long.toString(notes.get(notes.size() - 1).lastSequence())));
        } else if (!notes.isEmpty()
                && lastSequence > notes.get(notes.size() - 1).lastSequence()) {
            long last = notes.get(notes.size() - 1).lastSequence();
            broken.at(last + 1, TEXTS.text("joined.long", Long.toString(last)));
        }
    }
}
