// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;
import java.util.Optional;
import org.ohmstead.history.Period;
import org.ohmstead.units.text.Messages;

/**
 * One thing that is compared.
 *
 * @param folder of the project; empty for the one that is open
 * @param period in which the readings were taken
 */
record CompareItem(Optional<Path> folder, Period period) {
    private static final Messages TEXTS = Messages.of(CompareItem.class);

    /** The whole project that is open. */
    static final CompareItem OPEN = new CompareItem(Optional.empty(), Period.ALWAYS);

    private static final String SUFFIX = ".ohmstead";

    /** Returns what its project is called: its folder without the suffix. */
    String source() {
        return folder.map(CompareItem::name).orElseGet(() -> TEXTS.text("items.open"));
    }

    /** Returns a project's name: that of its folder without the suffix. */
    static String name(Path folder) {
        Path last = folder.getFileName();
        String name = last == null ? folder.toString() : last.toString();
        return name.endsWith(SUFFIX) && name.length() > SUFFIX.length()
                ? name.substring(0, name.length() - SUFFIX.length())
                : name;
    }

    /** Returns the period as {@link Period#parse} reads it; empty for all time. */
    String periodText() {
        return period.equals(Period.ALWAYS)
                ? ""
                : period.from().map(Object::toString).orElse("") + ".."
                        + period.to().map(Object::toString).orElse("");
    }

    /** Returns the period as short as it can be said: "2024", "2024-03", or in words. */
    String shortPeriod() {
        if (period.from().isPresent() && period.to().isPresent()) {
            LocalDate from = period.from().get();
            LocalDate to = period.to().get();
            if (from.getDayOfYear() == 1 && to.equals(from.plusYears(1).minusDays(1))) {
                return Year.from(from).toString();
            }
            if (from.getDayOfMonth() == 1 && to.equals(from.plusMonths(1).minusDays(1))) {
                return YearMonth.from(from).toString();
            }
        }
        return period.words();
    }
}
