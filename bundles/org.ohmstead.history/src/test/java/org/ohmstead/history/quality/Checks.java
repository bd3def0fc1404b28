// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.history.SampleProject;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;

/** Typed-in values of check standards, one after the other, and the review of them. */
final class Checks {
    /** The day after the last value, when there is one each day from the first of January 2026 on. */
    private final List<LogEntry> entries = new ArrayList<>();

    private LocalDate day = LocalDate.of(2026, 1, 1);

    /** Adds one value each day at eight, by one operator. */
    Checks daily(CheckStandard standard, double... values) {
        for (double value : values) {
            add(standard, day, 8, "N. N.", "Bench 1", value);
            day = day.plusDays(1);
        }
        return this;
    }

    /** Adds a value. */
    Checks add(CheckStandard standard, LocalDate on, int hour, String operator, String bench, double value) {
        Project project = SampleProject.with(standard)
                .withBench(SampleProject.with().bench().withPlace(bench));
        Instant at = on.atTime(hour, 0).toInstant(ZoneOffset.UTC);
        entries.add(SampleProject.entry(
                entries.size() + 1,
                new TypedCheck(standard, value, OptionalDouble.empty(), operator, at)
                        .figures(project, SampleProject.REVISION, "0.1.0")));
        return this;
    }

    List<LogEntry> entries() {
        return List.copyOf(entries);
    }

    /** Returns the day of the newest of the daily values. */
    LocalDate lastDay() {
        return day.minusDays(1);
    }

    QualityReview review(CheckStandard standard, LocalDate today) {
        return QualityReview.of(SampleProject.with(standard), standard, entries(), today, ZoneOffset.UTC);
    }

    QualityReview review(CheckStandard standard) {
        return review(standard, lastDay());
    }
}
