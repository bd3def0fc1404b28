// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Optional;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;

/** The columns of the log's table, in their order. */
enum LogColumn {
    NUMBER(false, IndexColumn.PLACE),
    STATE(false, IndexColumn.STATE),
    TIME(false, IndexColumn.TAKEN_AT),
    MODE(false, IndexColumn.MODE),
    LOAD(true, IndexColumn.LOAD_OHMS),
    SUPPLY(true, IndexColumn.SUPPLY_VOLTS),
    POWER(true, IndexColumn.POWER_WATTS),
    UNCERTAINTY(true, IndexColumn.UNCERTAINTY_WATTS),
    INSTRUMENTS(false, IndexColumn.OVERDUE),
    CHANNEL(false),
    DISTORTION(true, IndexColumn.THD_F_RATIO),
    STEP(false, IndexColumn.STEP_ID),
    END_POINT(false),
    OUTCOME(false, IndexColumn.OUTCOME),
    AMPLIFIER(false, IndexColumn.AMPLIFIER),
    SERIAL(false, IndexColumn.SERIAL_NUMBER),
    BENCH(false, IndexColumn.BENCH),
    OPERATOR(false, IndexColumn.OPERATOR);

    private static final Messages TEXTS = Messages.of(LogColumn.class);

    private final boolean numeric;
    private final Optional<IndexColumn> sortedBy;

    LogColumn(boolean numeric, IndexColumn sortedBy) {
        this.numeric = numeric;
        this.sortedBy = Optional.of(sortedBy);
    }

    LogColumn(boolean numeric) {
        this.numeric = numeric;
        this.sortedBy = Optional.empty();
    }

    String header() {
        String header = TEXTS.text("column." + name());
        return this == UNCERTAINTY ? header + ", " + Coverage.words() : header;
    }

    boolean numeric() {
        return numeric;
    }

    String hint() {
        return this == UNCERTAINTY
                ? TEXTS.text("column.UNCERTAINTY.hint", Coverage.adjective())
                : TEXTS.text("column." + name() + ".hint");
    }

    /** Returns what the index sorts by for this column; empty when it does not know it. */
    Optional<IndexColumn> sortedBy() {
        return sortedBy;
    }
}
