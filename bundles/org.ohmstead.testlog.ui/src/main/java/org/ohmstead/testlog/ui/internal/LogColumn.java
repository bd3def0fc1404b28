// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Comparator;
import java.util.function.Function;
import org.ohmstead.workbench.look.Coverage;

/** The columns of the log's table, in their order. */
enum LogColumn {
    NUMBER("Entry", false, "Number of the entry in the log.", Comparator.comparingLong(row -> row.entry()
            .sequence())),
    STATE("State", false, "Whether the entry counts.", Comparator.comparing(LogRow::state)),
    TIME(
            "Taken (UTC)",
            false,
            "When the reading was taken, or the remark written.",
            Comparator.comparing(LogRow::time)),
    MODE("Mode", false, "How the channels met the load."),
    LOAD("Load (\u03a9)", true, "The value that the load stands for.", number(LogRow::loadOhms)),
    SUPPLY(
            "Supply (V)",
            true,
            "Direct volts at the amplifier's terminals at the end point.",
            number(LogRow::supplyVolts)),
    POWER("Power (W)", true, "Output power of the channel with the least.", number(LogRow::powerWatts)),
    UNCERTAINTY("\u00b1 (W)", true, "uncertainty of the power.", number(LogRow::uncertaintyWatts)),
    CHANNEL("Ch.", false, "The channel with the least power; the figures are its own."),
    DISTORTION("THD_F (%)", true, "Harmonics over the fundamental there.", number(LogRow::thdFRatio)),
    STEP("Step", false, "Which step of the plan, or what the entry says."),
    END_POINT("End point", false, "What ended the search for power."),
    OUTCOME("Outcome", false, "Whether the end point was reached."),
    OPERATOR("Operator", false, "Who ran it or wrote it.");

    private final String header;
    private final boolean numeric;
    private final String hint;
    private final Comparator<LogRow> order;

    LogColumn(String header, boolean numeric, String hint, Comparator<LogRow> order) {
        this.header = header;
        this.numeric = numeric;
        this.hint = hint;
        this.order = order;
    }

    LogColumn(String header, boolean numeric, String hint) {
        this.header = header;
        this.numeric = numeric;
        this.hint = hint;
        this.order = Comparator.comparing(row -> row.cell(this), String.CASE_INSENSITIVE_ORDER);
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

    /** Returns the order of rows by this column; rows that are equal there keep the order of the log. */
    Comparator<LogRow> order(boolean falling) {
        Comparator<LogRow> wanted = falling ? order.reversed() : order;
        return wanted.thenComparingLong(row -> row.entry().sequence());
    }

    private static Comparator<LogRow> number(Function<LogRow, Double> figure) {
        return Comparator.comparing(figure);
    }
}
