// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.ohmstead.units.text.Said;

/** Threads that a plug-in opened and left behind. */
final class LeftThreads {
    private static final long LONGEST_WAIT_MILLIS = 300;
    private static final int ROOM = 8;

    private final ThreadGroup group;
    private final RunLimits limits;
    private final Set<Thread> before;

    /** Remembers what is there now. */
    LeftThreads(ThreadGroup group, RunLimits limits) {
        this(group, limits, Set.of());
    }

    private LeftThreads(ThreadGroup group, RunLimits limits, Set<Thread> before) {
        this.group = group;
        this.limits = limits;
        this.before = before;
    }

    /** Returns a finder that passes over the threads that are there now. */
    LeftThreads sinceNow() {
        return new LeftThreads(group, limits, Set.copyOf(threads()));
    }

    private List<Thread> threads() {
        Thread[] room = new Thread[ROOM];
        int count = group.enumerate(room);
        while (count == room.length) {
            room = new Thread[2 * room.length];
            count = group.enumerate(room);
        }
        List<Thread> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(room[i]);
        }
        return all;
    }

    /** Gives threads a moment to end, interrupts those that do not, and says which there were. */
    List<Said> found(Plugin<?, ?> plugin) {
        Set<Thread> left = new HashSet<>(threads());
        left.removeAll(before);
        await(left);
        left.removeIf(thread -> !thread.isAlive());
        if (left.isEmpty()) {
            return List.of();
        }
        List<String> names = left.stream().map(Thread::getName).sorted().toList();
        left.forEach(Thread::interrupt);
        await(left);
        boolean stubborn = left.stream().anyMatch(Thread::isAlive);
        String shown = Contained.cut(String.join(", ", names));
        String key = "left" + (names.size() == 1 ? ".one" : ".many") + (stubborn ? ".stubborn" : ".ended");
        return List.of(Sentences.of(key, plugin, names.size(), shown));
    }

    private void await(Set<Thread> left) {
        boolean interrupted = Thread.interrupted();
        long end = System.nanoTime()
                + Math.min(
                        TimeUnit.MILLISECONDS.toNanos(LONGEST_WAIT_MILLIS),
                        limits.grace().toNanos());
        for (Thread thread : left) {
            try {
                long millis = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
                if (millis > 0) {
                    thread.join(millis);
                }
            } catch (InterruptedException told) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
