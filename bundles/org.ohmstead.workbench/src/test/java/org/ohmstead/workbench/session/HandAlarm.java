// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** An alarm that rings when its clock is moved; what is wanted soon is done at once, or when it is let go. */
final class HandAlarm implements Alarm {
    private record Entry(Instant at, Optional<Duration> pause, Runnable action) {}

    private final HandClock clock;
    private final List<Entry> waiting = new ArrayList<>();
    private final List<Runnable> held = new ArrayList<>();
    private boolean holding;

    HandAlarm(HandClock clock) {
        this.clock = clock;
    }

    @Override
    public Registration after(Duration delay, Runnable action) {
        return add(new Entry(clock.instant().plus(delay), Optional.empty(), action));
    }

    @Override
    public Registration every(Duration pause, Runnable action) {
        return add(new Entry(clock.instant().plus(pause), Optional.of(pause), action));
    }

    private Registration add(Entry entry) {
        waiting.add(entry);
        return () -> waiting.removeIf(other -> other.action() == entry.action());
    }

    @Override
    public void soon(Runnable action) {
        if (holding) {
            held.add(action);
        } else {
            action.run();
        }
    }

    /** Holds back what is wanted soon. */
    void hold() {
        holding = true;
    }

    /** Does what was held back. */
    void letGo() {
        holding = false;
        List<Runnable> actions = List.copyOf(held);
        held.clear();
        actions.forEach(Runnable::run);
    }

    /** Lets time pass. */
    void advance(Duration span) {
        Instant end = clock.instant().plus(span);
        while (true) {
            Optional<Entry> next =
                    waiting.stream().filter(entry -> !entry.at().isAfter(end)).min(Comparator.comparing(Entry::at));
            if (next.isEmpty()) {
                break;
            }
            Entry entry = next.get();
            waiting.remove(entry);
            clock.advance(Duration.between(clock.instant(), entry.at()));
            entry.pause().ifPresent(pause -> add(new Entry(entry.at().plus(pause), entry.pause(), entry.action())));
            entry.action().run();
        }
        clock.advance(Duration.between(clock.instant(), end));
    }

    @Override
    public void close() {
        waiting.clear();
    }
}
