// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;

/**
 * Watches the user interface's thread while it handles one event after the other, and names the code of ours that kept it for longer
 * than allowed. Processor time is counted, so that a busy machine accuses nobody.
 */
final class StallWatch {
    /** How long one event may keep the thread. */
    static final int ALLOWED_MILLISECONDS = 50;

    private static final long SAMPLE_NANOSECONDS = 5_000_000;
    private static final int FRAMES = 40;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    /** An event that took too long, and what was running most of the time. */
    record Stall(long cpuMilliseconds, String culprit, String stack) {
        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%d ms of processor time: %s%n%s", cpuMilliseconds, culprit, stack);
        }
    }

    private final Thread watched;
    private final List<Stall> stalls = new ArrayList<>();
    private final List<StackTraceElement[]> samples = new ArrayList<>();
    private volatile boolean handling;
    private long cpuAtStart;

    StallWatch(Thread watched) {
        this.watched = watched;
        Thread sampler = new Thread(this::sample, "stall watch");
        sampler.setDaemon(true);
        sampler.start();
    }

    /** Called on the watched thread before an event is handled. */
    void begin() {
        synchronized (samples) {
            samples.clear();
        }
        cpuAtStart = THREADS.getThreadCpuTime(watched.getId());
        handling = true;
    }

    /** Called on the watched thread after an event was handled. */
    void end() {
        handling = false;
        long cpuMilliseconds = (THREADS.getThreadCpuTime(watched.getId()) - cpuAtStart) / 1_000_000;
        if (cpuMilliseconds > ALLOWED_MILLISECONDS) {
            synchronized (samples) {
                stalls.add(new Stall(cpuMilliseconds, culprit(), stack()));
            }
        }
    }

    /** Returns the stalls in which our own code was at work, not only the platform's. */
    List<Stall> ours() {
        return stalls.stream().filter(stall -> !stall.culprit().isEmpty()).toList();
    }

    /** Forgets what was seen so far. */
    void clear() {
        stalls.clear();
    }

    /** Returns all that was seen, the platform's own work too, as text for a report. */
    String report() {
        return stalls.stream().map(Stall::toString).collect(Collectors.joining("\n"));
    }

    private void sample() {
        while (true) {
            LockSupport.parkNanos(SAMPLE_NANOSECONDS);
            if (handling) {
                StackTraceElement[] stack = watched.getStackTrace();
                synchronized (samples) {
                    if (handling) {
                        samples.add(stack);
                    }
                }
            }
        }
    }

    /** The topmost frame of ours that was seen most often, but for the tests' own; empty when none was seen in half of the samples. */
    private String culprit() {
        List<String> seen = samples.stream()
                .map(stack -> Arrays.stream(stack)
                        .map(StackTraceElement::toString)
                        .filter(StallWatch::ours)
                        .findFirst()
                        .orElse(""))
                .filter(frame -> !frame.isEmpty())
                .map(frame -> frame.replaceAll("\\(.*", ""))
                .toList();
        if (seen.size() * 2 < samples.size()) {
            return "";
        }
        return seen.stream().collect(Collectors.groupingBy(frame -> frame, Collectors.counting())).entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
    }

    private static boolean ours(String frame) {
        // The application lies at the bottom of every stack.
        return frame.contains("org.ohmstead.")
                && !frame.contains("org.ohmstead.ui.tests")
                && !frame.contains("WorkbenchApplication.start");
    }

    private String stack() {
        if (samples.isEmpty()) {
            return "";
        }
        return Arrays.stream(samples.get(samples.size() / 2))
                .limit(FRAMES)
                .map(frame -> "    at " + frame)
                .collect(Collectors.joining("\n"));
    }
}
