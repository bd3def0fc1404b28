// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Locale;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;

/** What a check of the log found, in words. */
final class Verdicts {
    private static final int SHOWN_FAULTS = 3;

    private Verdicts() {}

    static String headline(VerifyReport report) {
        if (report.intact()) {
            return String.format(
                    Locale.ROOT,
                    "Whole: all %d %s checked, each one's content and its place in the chain are as written.",
                    report.entriesChecked(),
                    report.entriesChecked() == 1 ? "entry" : "entries");
        }
        int count = report.faults().size();
        return String.format(
                Locale.ROOT,
                "Not whole: %d %s in %d entries checked.",
                count,
                count == 1 ? "fault" : "faults",
                report.entriesChecked());
    }

    /** Returns the first faults, one in a line; empty when there is none. */
    static String faults(VerifyReport report) {
        StringBuilder lines = new StringBuilder();
        report.faults().stream().limit(SHOWN_FAULTS).forEach(fault -> lines.append(lines.isEmpty() ? "" : "\n")
                .append(line(fault)));
        int more = report.faults().size() - SHOWN_FAULTS;
        if (more > 0) {
            lines.append("\nand ").append(more).append(" more.");
        }
        return lines.toString();
    }

    private static String line(VerifyFault fault) {
        boolean named = fault.entryId().isEmpty() || fault.sentence().contains(fault.entryId());
        return named ? fault.sentence() : fault.entryId() + ": " + fault.sentence();
    }
}
