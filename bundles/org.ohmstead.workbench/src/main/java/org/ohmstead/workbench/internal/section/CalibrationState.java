// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.table.Mark;

/**
 * How a meter stands with its calibration on a day.
 *
 * @param words for the table, such as "overdue by 12 days"
 * @param mark when it wants attention
 */
record CalibrationState(String words, Optional<Mark> mark) {
    /** From how many days before it runs out the user is reminded. */
    static final int SOON_DAYS = 60;

    /** Returns the state of a meter on a day. */
    static CalibrationState of(Meter meter, LocalDate today) {
        if (meter.calibrationDueOn().isEmpty()) {
            return new CalibrationState("no due day", Optional.empty());
        }
        LocalDate due = meter.calibrationDueOn().get();
        long days = ChronoUnit.DAYS.between(today, due);
        if (meter.isOverdueOn(today)) {
            return new CalibrationState(
                    "overdue by " + days(-days),
                    Optional.of(new Mark(
                            Severity.WARNING,
                            "The calibration ran out on " + due
                                    + ". Have it calibrated; until then its readings are marked as overdue.")));
        }
        if (days <= SOON_DAYS) {
            return new CalibrationState(
                    days == 0 ? "due today" : "due in " + days(days),
                    Optional.of(new Mark(
                            Severity.NOTE,
                            "The calibration runs out on " + due + ". Plan to have it calibrated before that day.")));
        }
        return new CalibrationState("in date", Optional.empty());
    }

    private static String days(long days) {
        return days == 1 ? "1 day" : days + " days";
    }
}
