// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.LongSupplier;
import org.ohmstead.testlog.LogEntry;

/**
 * The latest moment at which each entry of a log can have been made. Entries carry what the computer's clock showed, and that clock is
 * set back and forth, by hand or by a time server. So a moment here is one of a clock that nobody sets: the computer's as it was when
 * this was made, plus what the steady clock has counted since. An entry was made before those behind it in its chain, whatever it says;
 * before now, whatever it says; and one that says a time before an entry ahead of it, while a later clock is past that again, was made
 * by a clock that may have been put right since: it tells nothing. A clock that was slow when an entry was made by another run of this
 * program, and was put right since, with no time in the log that went back, cannot be told from one that was right.
 *
 * <p>The steady clock of some systems stands still while the computer sleeps; then entries seem later than they are, never earlier.
 */
final class LatestEnds {
    /** By how much the computer's clock may part from the steady one between two looks without having been set: time servers pull slowly. */
    static final Duration LEEWAY = Duration.ofSeconds(1);

    private final Clock clock;
    private final LongSupplier steadyNanos;
    private final Instant startWall;
    private final long startNanos;
    private final Map<String, Seen> seen = new HashMap<>();
    private Duration aheadBefore = Duration.ZERO;
    private Instant now;

    /**
     * What an entry's own time tells.
     *
     * @param latest the latest moment that it can mean
     * @param exact whether it is just that moment, give or take {@link #LEEWAY}: it came while the steady clock was looked at
     */
    private record Seen(Instant latest, boolean exact) {}

    /**
     * Looks at what a log holds to begin with.
     *
     * @param entries in the order of the log
     * @param clock the computer's
     * @param steadyNanos nanoseconds of a clock that nobody sets, such as {@code System::nanoTime}
     */
    LatestEnds(List<LogEntry> entries, Clock clock, LongSupplier steadyNanos) {
        this.clock = clock;
        this.steadyNanos = steadyNanos;
        this.startWall = clock.instant();
        this.startNanos = steadyNanos.getAsLong();
        this.now = startWall;
        Map<String, List<LogEntry>> chains = new HashMap<>();
        for (LogEntry entry : entries) {
            chains.computeIfAbsent(entry.chain(), any -> new ArrayList<>()).add(entry);
        }
        chains.values().forEach(this::seeFirst);
    }

    private void seeFirst(List<LogEntry> chain) {
        TreeSet<Instant> before = new TreeSet<>();
        List<Optional<Instant>> nextAbove = new ArrayList<>();
        for (LogEntry entry : chain) {
            nextAbove.add(Optional.ofNullable(before.higher(entry.recordedAt().plus(LEEWAY))));
            before.add(entry.recordedAt());
        }
        Instant reached = startWall;
        for (int at = chain.size() - 1; at >= 0; at--) {
            Instant shown = chain.get(at).recordedAt();
            Optional<Instant> above = nextAbove.get(at);
            boolean setForthAgain = above.isPresent() && !above.get().isAfter(reached);
            seen.put(chain.get(at).id(), new Seen(setForthAgain ? startWall : earlier(shown, startWall), false));
            reached = shown.isAfter(reached) ? shown : reached;
        }
    }

    /**
     * Looks at what the log holds now.
     *
     * @param entries what it held before, and behind that perhaps more
     * @return the moment
     */
    Instant see(List<LogEntry> entries) {
        Instant lastLook = now;
        now = startWall.plusNanos(steadyNanos.getAsLong() - startNanos);
        Duration ahead = Duration.between(now, clock.instant());
        for (LogEntry entry : entries) {
            if (!seen.containsKey(entry.id())) {
                seen.put(entry.id(), since(lastLook, ahead, entry));
            }
        }
        aheadBefore = ahead;
        return now;
    }

    /** When the clock was set between two looks, what came between them was made by the one or the other. */
    private Seen since(Instant lastLook, Duration ahead, LogEntry entry) {
        Instant meant = entry.recordedAt().minus(ahead.compareTo(aheadBefore) < 0 ? ahead : aheadBefore);
        if (entry.joined()) {
            return new Seen(earlier(meant, now), false);
        }
        boolean left = ahead.minus(aheadBefore).abs().compareTo(LEEWAY) <= 0;
        boolean possible = !meant.isBefore(lastLook.minus(LEEWAY)) && !meant.isAfter(now.plus(LEEWAY));
        return left && possible ? new Seen(earlier(meant, now), true) : new Seen(now, false);
    }

    /** Returns the latest moment of each of the entries that were looked at, in their order. */
    List<Instant> of(List<LogEntry> entries) {
        Map<String, Instant> behind = new HashMap<>();
        Instant[] latest = new Instant[entries.size()];
        for (int at = latest.length - 1; at >= 0; at--) {
            LogEntry entry = entries.get(at);
            latest[at] = earlier(seen.get(entry.id()).latest(), behind.getOrDefault(entry.chain(), now));
            behind.put(entry.chain(), latest[at]);
        }
        return List.of(latest);
    }

    /** Returns whether the moment of an entry is just when it was made, give or take {@link #LEEWAY}. */
    boolean exact(LogEntry entry) {
        return seen.get(entry.id()).exact();
    }

    private static Instant earlier(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }
}
