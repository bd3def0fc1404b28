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
            return new CalibrationState(Texts.text("calibration.none"), Optional.empty());
        }
        LocalDate due = meter.calibrationDueOn().get();
        long days = ChronoUnit.DAYS.between(today, due);
        if (meter.isOverdueOn(today)) {
            return new CalibrationState(
                    Texts.counted("calibration.overdue", (int) -days),
                    Optional.of(new Mark(Severity.WARNING, Texts.text("calibration.overdue.remedy", due.toString()))));
        }
        if (days <= SOON_DAYS) {
            return new CalibrationState(
                    days == 0 ? Texts.text("calibration.today") : Texts.counted("calibration.soon", (int) days),
                    Optional.of(new Mark(Severity.NOTE, Texts.text("calibration.soon.remedy", due.toString()))));
        }
        return new CalibrationState(Texts.text("calibration.valid"), Optional.empty());
    }
}
