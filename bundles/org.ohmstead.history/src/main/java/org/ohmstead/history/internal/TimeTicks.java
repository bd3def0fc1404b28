// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Tick;
import org.ohmstead.units.text.Messages;

/** A time axis in days since 1970 with labels at round dates. */
public final class TimeTicks {
    private static final Messages TEXTS = Messages.of(TimeTicks.class);
    private static final double SECONDS_PER_DAY = 86_400;
    private static final int MOST = 8;
    private static final List<Period> STEPS = List.of(
            Period.ofDays(1),
            Period.ofDays(2),
            Period.ofDays(7),
            Period.ofDays(14),
            Period.ofMonths(1),
            Period.ofMonths(3),
            Period.ofMonths(6),
            Period.ofYears(1),
            Period.ofYears(2),
            Period.ofYears(5),
            Period.ofYears(10),
            Period.ofYears(50),
            Period.ofYears(1000));

    private TimeTicks() {}

    /** Returns a moment's place on the axis. */
    public static double place(Instant moment) {
        return (moment.getEpochSecond() + moment.getNano() / 1e9) / SECONDS_PER_DAY;
    }

    /** Returns an axis from one moment to another, a little wider. */
    public static Axis axis(Instant from, Instant to) {
        double lower = place(from);
        double upper = place(to);
        double margin = Math.max(0.5, 0.03 * (upper - lower));
        LocalDate first = from.atZone(ZoneOffset.UTC).toLocalDate();
        LocalDate last = to.atZone(ZoneOffset.UTC).toLocalDate();
        List<Tick> ticks = List.of();
        for (Period step : STEPS) {
            ticks = ticks(first, last, step);
            if (ticks.size() <= MOST) {
                break;
            }
        }
        return Axis.linear(TEXTS.text("axis.date"), "")
                .withRange(lower - margin, upper + margin)
                .withTicks(ticks);
    }

    private static List<Tick> ticks(LocalDate first, LocalDate last, Period step) {
        List<Tick> ticks = new ArrayList<>();
        LocalDate day = start(first, step);
        while (!day.isAfter(last) && ticks.size() <= MOST) {
            if (!day.isBefore(first)) {
                ticks.add(new Tick(day.toEpochDay(), label(day, step)));
            }
            day = day.plus(step);
        }
        return ticks;
    }

    private static LocalDate start(LocalDate first, Period step) {
        if (step.getYears() > 0) {
            return LocalDate.of(first.getYear() - Math.floorMod(first.getYear(), step.getYears()), 1, 1);
        }
        if (step.getMonths() > 0) {
            int month = first.getMonthValue() - 1;
            return LocalDate.of(first.getYear(), 1 + month - month % step.getMonths(), 1);
        }
        return first;
    }

    private static String label(LocalDate day, Period step) {
        if (step.getYears() > 0) {
            return Integer.toString(day.getYear());
        }
        return step.getMonths() > 0 ? day.toString().substring(0, "2024-03".length()) : day.toString();
    }
}
