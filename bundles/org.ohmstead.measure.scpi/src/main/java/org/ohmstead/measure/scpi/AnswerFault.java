// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

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
    private final String remedy;

    /**
     * Makes a fault.
     *
     * @param what what the instrument did, to follow "The instrument at ..."
     * @param remedy whole sentences
     */
    AnswerFault(After after, String what, String remedy, Throwable cause) {
        super(what, cause);
        this.after = after;
        this.remedy = remedy;
    }

    AnswerFault(After after, String what, String remedy) {
        this(after, what, remedy, null);
    }

    After after() {
        return after;
    }

    String remedy() {
        return remedy;
    }
}
