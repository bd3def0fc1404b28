// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.BeforeTry;
import org.ohmstead.testlog.LogEntry;

/** However the computer's clock is set, no entry seems to be from before it was made. */
class LatestEndsLawsTest {
    private static final long DAY_SECONDS = 86_400;

    private final List<LogEntry> log = new ArrayList<>();
    private final List<Long> trueNanos = new ArrayList<>();
    private MovedClock clock = new MovedClock();

    @BeforeTry
    void begin() {
        log.clear();
        trueNanos.clear();
        clock = new MovedClock();
    }

    /** What is done next: time passes, the clock is set, an entry is made or not, somebody looks or not. */
    private record Deed(int passSeconds, long setSeconds, boolean entry, boolean look) {}

    @Provide
    Arbitrary<Deed> deeds() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 5000),
                        Arbitraries.frequencyOf(
                                Tuple.of(3, Arbitraries.just(0L)),
                                Tuple.of(1, Arbitraries.of(3600L, -3600L, 2 * 3600L, -300L, 300L)),
                                Tuple.of(1, Arbitraries.longs().between(-400 * DAY_SECONDS, 400 * DAY_SECONDS))),
                        Arbitraries.of(true, true, false),
                        Arbitraries.of(true, false))
                .as(Deed::new);
    }

    private void pass(int seconds) {
        clock.pass(Duration.ofSeconds(seconds));
    }

    private void entry() {
        log.add(HeatEntries.entry(log.size() + 1, clock.now, OptionalDouble.empty(), ""));
        trueNanos.add(clock.nanos());
    }

    /** Holds what is said against what is true; returns how many entries are said to be from just when they were made. */
    private int check(LatestEnds ends, long startNanos, Instant startShown) {
        Instant now = ends.see(log);
        assertEquals(
                clock.nanos() - startNanos, Duration.between(startShown, now).toNanos());
        List<Instant> latest = ends.of(log);
        int exact = 0;
        for (int at = 0; at < latest.size(); at++) {
            Duration late = Duration.between(startShown.plusNanos(trueNanos.get(at) - startNanos), latest.get(at));
            assertTrue(late.plus(LatestEnds.LEEWAY).toNanos() >= 0, at + " is said to be older by " + late.negated());
            assertFalse(latest.get(at).isAfter(now));
            assertTrue(at == 0 || !latest.get(at).isBefore(latest.get(at - 1)), "the order of the log");
            if (ends.exact(log.get(at))) {
                assertTrue(late.abs().compareTo(LatestEnds.LEEWAY) <= 0, at + " is late by " + late);
            }
            exact += late.isZero() ? 1 : 0;
        }
        return exact;
    }

    @Property(seed = "20261201", tries = 2000)
    void whileAProgramRunsTheClockMayBeSetOnceBetweenLooks(
            @ForAll @Size(max = 5) List<@IntRange(max = 5000) Integer> before,
            @ForAll @Size(max = 25) List<@From("deeds") Deed> deeds) {
        before.forEach(seconds -> {
            pass(seconds);
            entry();
        });
        long startNanos = clock.nanos();
        Instant startShown = clock.now;
        LatestEnds ends = new LatestEnds(List.copyOf(log), clock, clock::nanos);
        int made = log.size();
        boolean set = false;
        boolean setSinceLook = false;
        for (Deed deed : deeds) {
            pass(deed.passSeconds());
            if (setSinceLook && deed.setSeconds() != 0) {
                check(ends, startNanos, startShown);
            }
            setSinceLook |= deed.setSeconds() != 0;
            clock.set(Duration.ofSeconds(deed.setSeconds()));
            set |= deed.setSeconds() != 0;
            if (deed.entry()) {
                entry();
            }
            if (deed.look()) {
                setSinceLook = false;
                int exact = check(ends, startNanos, startShown);
                assertTrue(set || exact == log.size(), "a clock that nobody set tells all");
                assertTrue(exact >= made || set, "nothing is forgotten");
            }
        }
        check(ends, startNanos, startShown);
    }

    /** For each entry, the clock was right or wrong by one and the same time; it went wrong and right at most once. */
    @Property(seed = "20261202", tries = 2000)
    void aStretchOfWrongTimesInTheLogThatShowsOneStepBackTellsNoRest(
            @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 2, max = 5000) Integer> right,
            @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 2, max = 5000) Integer> wrong,
            @ForAll @Size(max = 8) List<@IntRange(min = 2, max = 5000) Integer> rightAgain,
            @ForAll @IntRange(min = 2, max = 5000) int untilNow,
            @ForAll boolean ahead,
            @ForAll @IntRange(max = 30_000_000) int furtherSeconds) {
        madeAfter(right);
        // Behind by so much that the first wrong time lies before the last right one, or ahead past the first right one
        // behind it.
        long least = ahead ? total(wrong) + untilNow + (rightAgain.isEmpty() ? 0 : rightAgain.get(0)) : total(wrong);
        Duration by = Duration.ofSeconds((ahead ? 1 : -1) * (least + 2 + furtherSeconds));
        clock.set(by);
        madeAfter(wrong);
        clock.set(by.negated());
        madeAfter(rightAgain);
        pass(untilNow);
        LatestEnds ends = new LatestEnds(List.copyOf(log), clock, clock::nanos);
        check(ends, clock.nanos(), clock.now);
    }

    @Property(seed = "20261203", tries = 1000)
    void aClockThatWasSetBackAndRunsOnTellsWhatWasSince(
            @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 2, max = 5000) Integer> before,
            @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 2, max = 5000) Integer> since,
            @ForAll @IntRange(max = 5000) int untilNow,
            @ForAll @IntRange(max = 30_000_000) int furtherSeconds) {
        madeAfter(before);
        clock.set(Duration.ofSeconds(-(total(before) + total(since) + untilNow + 2 + furtherSeconds)));
        madeAfter(since);
        pass(untilNow);
        LatestEnds ends = new LatestEnds(List.copyOf(log), clock, clock::nanos);
        assertTrue(check(ends, clock.nanos(), clock.now) >= since.size());
    }

    private void madeAfter(List<Integer> gaps) {
        gaps.forEach(seconds -> {
            pass(seconds);
            entry();
        });
    }

    private static long total(List<Integer> seconds) {
        return seconds.stream().mapToLong(each -> each).sum();
    }
}
