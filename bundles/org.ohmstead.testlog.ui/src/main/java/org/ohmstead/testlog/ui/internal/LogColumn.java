// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Optional;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.workbench.look.Coverage;

/** The columns of the log's table, in their order. */
enum LogColumn {
    NUMBER(
            "Entry",
            false,
            "Number of the entry in the log; a letter before it says from which joined log it came.",
            IndexColumn.PLACE),
    STATE("State", false, "Whether the entry counts.", IndexColumn.STATE),
    TIME("Taken (UTC)", false, "When the reading was taken, or the remark written.", IndexColumn.TAKEN_AT),
    MODE("Mode", false, "How the channels met the load.", IndexColumn.MODE),
    LOAD("Load (\u03a9)", true, "The value that the load stands for.", IndexColumn.LOAD_OHMS),
    SUPPLY("Supply (V)", true, "Direct volts at the amplifier's terminals at the end point.", IndexColumn.SUPPLY_VOLTS),
    POWER("Power (W)", true, "Output power of the channel with the least.", IndexColumn.POWER_WATTS),
    UNCERTAINTY("\u00b1 (W)", true, "uncertainty of the power.", IndexColumn.UNCERTAINTY_WATTS),
    INSTRUMENTS(
            "Instruments",
            false,
            "Marked where the calibration of an instrument had run out when the reading was taken.",
            IndexColumn.OVERDUE),
    CHANNEL("Ch.", false, "The channel with the least power; the figures are its own."),
    DISTORTION("THD_F (%)", true, "Harmonics over the fundamental there.", IndexColumn.THD_F_RATIO),
    STEP("Step", false, "Which step of the plan, or what the entry says.", IndexColumn.STEP_ID),
    END_POINT("End point", false, "What ended the search for power."),
    OUTCOME("Outcome", false, "Whether the end point was reached.", IndexColumn.OUTCOME),
    AMPLIFIER("Amplifier", false, "Which amplifier it is about.", IndexColumn.AMPLIFIER),
    SERIAL("Serial no.", false, "Serial number of the specimen.", IndexColumn.SERIAL_NUMBER),
    BENCH("Bench", false, "On which bench it was found.", IndexColumn.BENCH),
    OPERATOR("Operator", false, "Who ran it or wrote it.", IndexColumn.OPERATOR);

    private final String header;
    private final boolean numeric;
    private final String hint;
    private final Optional<IndexColumn> sortedBy;

    LogColumn(String header, boolean numeric, String hint, IndexColumn sortedBy) {
        this.header = header;
        this.numeric = numeric;
        this.hint = hint;
        this.sortedBy = Optional.of(sortedBy);
    }

    LogColumn(String header, boolean numeric, String hint) {
        this.header = header;
        this.numeric = numeric;
        this.hint = hint;
        this.sortedBy = Optional.empty();
    }

    String header() {
        return this == UNCERTAINTY ? header + ", " + Coverage.words() : header;
    }

    boolean numeric() {
        return numeric;
    }

    String hint() {
        return this == UNCERTAINTY ? Coverage.adjective() + " " + hint : hint;
    }

    /** Returns what the index sorts by for this column; empty when it does not know it. */
    Optional<IndexColumn> sortedBy() {
        return sortedBy;
    }
}
