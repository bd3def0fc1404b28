// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

/** What the entries of a log can be put in order by. Entries that lack it come last, whichever way the order goes. */
public enum IndexColumn {
    /** The place in the log; joined entries directly before the join that brought them. */
    PLACE(IndexField.SEQUENCE),
    /** The chain's label; the log's own comes first. */
    CHAIN(IndexField.CHAIN),
    /** The id: by kind, then by number. */
    ID(IndexField.NUMBER),
    /** What the entry is. */
    KIND(IndexField.KIND),
    /** When it was added. */
    RECORDED_AT(IndexField.RECORDED),
    /** When it was taken; when it was added, for entries that are not taken. */
    TAKEN_AT(IndexField.TAKEN),
    /** The amplifier it is about. */
    AMPLIFIER(IndexField.AMPLIFIER),
    /** The serial number of the specimen. */
    SERIAL_NUMBER(IndexField.SERIAL),
    /** The bench it was found on. */
    BENCH(IndexField.BENCH),
    /** Who found or wrote it. */
    OPERATOR(IndexField.OPERATOR),
    /** How the channels met the load. */
    MODE(IndexField.MODE),
    /** Which load. */
    LOAD_ID(IndexField.LOAD),
    /** What the load stands for, in ohms. */
    LOAD_OHMS(IndexField.LOAD_OHMS),
    /** Direct volts at the amplifier. */
    SUPPLY_VOLTS(IndexField.SUPPLY),
    /** Which step of the plan. */
    STEP_ID(IndexField.STEP),
    /** What was fed in. */
    STIMULUS(IndexField.STIMULUS),
    /** Which measurement or procedure found it. */
    MEASUREMENT(IndexField.MEASUREMENT),
    /** Power of the weakest channel. */
    POWER_WATTS(IndexField.POWER),
    /** Its standard uncertainty. */
    UNCERTAINTY_WATTS(IndexField.UNCERTAINTY),
    /** Harmonics over the fundamental, of that channel. */
    THD_F_RATIO(IndexField.THD),
    /** Whether that channel reached the end point. */
    OUTCOME(IndexField.OUTCOME),
    /** Whether the entry counts. */
    STATE(IndexField.STATE),
    /** Whether an instrument was overdue. */
    OVERDUE(IndexField.OVERDUE),
    /** What it says. */
    TEXT(IndexField.TEXT);

    private final IndexField field;

    IndexColumn(IndexField field) {
        this.field = field;
    }

    /** Returns where the index keeps it; for the place, something that rises along each chain. */
    IndexField field() {
        return field;
    }
}
