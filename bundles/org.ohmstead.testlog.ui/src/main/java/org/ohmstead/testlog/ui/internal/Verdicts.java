// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;

/** What a check of the log found, in words. */
final class Verdicts {
    private static final Messages TEXTS = Messages.of(Verdicts.class);
    private static final int SHOWN_FAULTS = 3;

    private Verdicts() {}

    static String headline(VerifyReport report) {
        if (report.intact()) {
            return TEXTS.text(
                    report.entriesChecked() == 1 ? "verdict.whole.one" : "verdict.whole.many",
                    String.valueOf(report.entriesChecked()));
        }
        int count = report.faults().size();
        return TEXTS.text(
                count == 1 ? "verdict.broken.one" : "verdict.broken.many",
                Integer.toString(count),
                String.valueOf(report.entriesChecked()));
    }

    /** Returns the first faults, one in a line; empty when there is none. */
    static String faults(VerifyReport report) {
        StringBuilder lines = new StringBuilder();
        report.faults().stream().limit(SHOWN_FAULTS).forEach(fault -> lines.append(lines.isEmpty() ? "" : "\n")
                .append(line(fault)));
        int more = report.faults().size() - SHOWN_FAULTS;
        if (more > 0) {
            lines.append('\n').append(TEXTS.text("verdict.more", Integer.toString(more)));
        }
        return lines.toString();
    }

    /** Returns where the clock went back, one in a line; empty when it never did. */
    static String clock(VerifyReport report) {
        StringBuilder lines = new StringBuilder();
        report.clockSteps().stream().limit(SHOWN_FAULTS).forEach(step -> lines.append(lines.isEmpty() ? "" : "\n")
                .append(step.sentence()));
        if (report.clockStepCount() > SHOWN_FAULTS) {
            lines.append('\n')
                    .append(TEXTS.text("verdict.clockMore", Long.toString(report.clockStepCount() - SHOWN_FAULTS)));
        }
        return lines.toString();
    }

    private static String line(VerifyFault fault) {
        boolean named = fault.entryId().isEmpty() || fault.sentence().contains(fault.entryId());
        return named ? fault.sentence() : fault.entryId() + ": " + fault.sentence();
    }
}
