// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.function.Supplier;
import org.ohmstead.units.text.Said;

/** What is wrong with an answer. The words are completed by whoever knows the instrument and the command. */
final class AnswerFault extends Exception {
    private static final long serialVersionUID = 1L;

    /** What is left of the link. */
    enum After {
        /** The answer was read to its end; the next query can follow. */
        IN_STEP,
        /** More may be on its way; the link must be dropped. */
        OUT_OF_STEP,
        /** The link is gone; a query may be asked again on a new one. */
        LOST
    }

    private final After after;
    private final Said what;
    private final Said remedy;

    /**
     * Makes a fault.
     *
     * @param what what the instrument did, to follow "The instrument at ..."
     * @param remedy whole sentences
     */
    AnswerFault(After after, Supplier<String> what, Supplier<String> remedy, Throwable cause) {
        this(after, Said.of(what), Said.of(remedy), cause);
    }

    AnswerFault(After after, Supplier<String> what, Supplier<String> remedy) {
        this(after, what, remedy, null);
    }

    private AnswerFault(After after, Said what, Said remedy, Throwable cause) {
        super(what.kept(), cause);
        this.after = after;
        this.what = what;
        this.remedy = remedy;
    }

    After after() {
        return after;
    }

    /** Returns what the instrument did, in the language spoken now. */
    String what() {
        return what.text();
    }

    /** Returns whole sentences in the language spoken now. */
    String remedy() {
        return remedy.text();
    }
}
