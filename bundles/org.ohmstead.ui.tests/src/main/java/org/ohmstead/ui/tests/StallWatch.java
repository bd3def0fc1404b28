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

    /**
     * An event that took too long.
     *
     * @param cpuMilliseconds processor time of the whole event
     * @param ourMilliseconds the part of it in which code of ours was at work, also while it waited for the platform's
     * @param culprit the topmost method of ours that was seen most often; empty for none
     * @param stack what was running in the middle of it
     */
    record Stall(long cpuMilliseconds, long ourMilliseconds, String culprit, String stack) {
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d ms of processor time, %d ms in code of ours: %s%n%s",
                    cpuMilliseconds,
                    ourMilliseconds,
                    culprit,
                    stack);
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
                List<String> frames = ourFrames();
                long ours = samples.isEmpty() ? 0 : cpuMilliseconds * frames.size() / samples.size();
                stalls.add(new Stall(cpuMilliseconds, ours, culprit(frames), stack()));
            }
        }
    }

    /** Returns the stalls in which our own code alone took longer than allowed. */
    List<Stall> ours() {
        return oursOver(ALLOWED_MILLISECONDS);
    }

    /** Returns the stalls in which our own code took longer than so many milliseconds. */
    List<Stall> oursOver(long milliseconds) {
        return stalls.stream()
                .filter(stall -> stall.ourMilliseconds() > milliseconds)
                .toList();
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

    /** The topmost frame of ours in each sample that has one. */
    private List<String> ourFrames() {
        return samples.stream()
                .map(stack -> Arrays.stream(stack)
                        .map(StackTraceElement::toString)
                        .filter(StallWatch::ours)
                        .findFirst()
                        .orElse(""))
                .filter(frame -> !frame.isEmpty())
                .map(frame -> frame.replaceAll("\\(.*", ""))
                .toList();
    }

    private static String culprit(List<String> frames) {
        return frames.stream().collect(Collectors.groupingBy(frame -> frame, Collectors.counting())).entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
    }

    static boolean ours(String frame) {
        // The application lies at the bottom of every stack; a page is opened by the platform, which then asks for its
        // parts; and when a part of ours passes the focus on, the platform at once activates that part below it.
        return frame.contains("org.ohmstead.")
                && !frame.contains("org.ohmstead.ui.tests")
                && !frame.contains("WorkbenchApplication.start")
                && !frame.contains("org.ohmstead.workbench.Sections.open")
                && !frame.contains(".setFocus(");
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
