// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Check standards and values whose limits are known in closed form. */
final class Standards {
    /** Typed in, in watts, limits from 20 values. */
    static final CheckStandard TYPED = new CheckStandard(
            "w", "50 W standard", "", "power", "", "W", 20, 0.01, OptionalDouble.empty(), OptionalDouble.empty(), 0);
    /** Measured by a step of the demo's plan. */
    static final CheckStandard MEASURED = new CheckStandard(
            "m", "Kept amplifier", "s1", "power", "", "W", 4, 0.01, OptionalDouble.empty(), OptionalDouble.empty(), 0);

    static final Instant FIRST = Instant.parse("2026-10-01T08:00:00Z");

    private Standards() {}

    /**
     * Writes values of a day each, by two operators in turn. Twenty that are 50.0 and 50.1 in turn have the mean 50.05, the mean moving
     * range 0.1 and limits of 50.05 -+ 2.66 x 0.1 (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2).
     */
    static void write(Stage stage, Project project, CheckStandard standard, List<Double> values)
            throws TestLogException {
        write(stage, project, standard, 0, values);
    }

    /** Writes values of the days from a day on, counted from 0. */
    static void write(Stage stage, Project project, CheckStandard standard, int firstDay, List<Double> values)
            throws TestLogException {
        try (TestLog log = TestLog.open(stage.logFile())) {
            for (int index = 0; index < values.size(); index++) {
                TypedCheck check = new TypedCheck(
                        standard,
                        values.get(index),
                        OptionalDouble.of(0.05),
                        index % 4 < 2 ? "A. Adler" : "B. Birch",
                        FIRST.plus(Duration.ofDays(firstDay + index)));
                log.append(check.figures(project, "0", "1"));
            }
        }
    }

    /** Returns 50.0 and 50.1 in turn, so many in all, then others. */
    static List<Double> inTurn(int count, double... then) {
        List<Double> values = new ArrayList<>();
        for (int index = 0; index < count; index++) {
            values.add(index % 2 == 0 ? 50.0 : 50.1);
        }
        for (double value : then) {
            values.add(value);
        }
        return values;
    }
}
