// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/** How long single events keep the user interface's thread in code of ours, by processor time and samples of what runs. */
final class OurTime {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final long SAMPLE_NANOS = 1_000_000;
    private static final long WORTH_A_LOOK_MILLISECONDS = 20;

    private final Thread watched;
    private final List<StackTraceElement[]> samples = new ArrayList<>();
    private volatile boolean handling;
    private volatile boolean ended;
    private long cpuAtStart;
    private double longest;
    private String what = "";

    OurTime(Thread watched) {
        this.watched = watched;
        Thread sampler = new Thread(this::sample, "our time");
        sampler.setDaemon(true);
        sampler.start();
    }

    private void sample() {
        while (!ended) {
            LockSupport.parkNanos(SAMPLE_NANOS);
            if (handling) {
                StackTraceElement[] stack = watched.getStackTrace();
                synchronized (samples) {
                    samples.add(stack);
                }
            }
        }
    }

    void begin() {
        synchronized (samples) {
            samples.clear();
        }
        cpuAtStart = THREADS.getThreadCpuTime(watched.getId());
        handling = true;
    }

    void end() {
        handling = false;
        double milliseconds = (THREADS.getThreadCpuTime(watched.getId()) - cpuAtStart) / 1e6;
        if (milliseconds < WORTH_A_LOOK_MILLISECONDS) {
            return;
        }
        synchronized (samples) {
            List<String> ours = samples.stream()
                    .flatMap(stack -> Arrays.stream(stack)
                            .map(StackTraceElement::toString)
                            .filter(OurTime::ours)
                            .limit(1))
                    .toList();
            double share = samples.isEmpty() ? 0 : milliseconds * ours.size() / samples.size();
            if (share > longest) {
                longest = share;
                what = share + " of " + milliseconds + " ms: " + ours.get(ours.size() / 2);
            }
        }
    }

    private static boolean ours(String frame) {
        return frame.contains("org.ohmstead.")
                && !frame.contains(".Stage")
                && !frame.contains("Test")
                && !frame.contains(".OurTime")
                && !frame.contains(".Gallery");
    }

    /** Returns the milliseconds that code of ours took in the longest event since the last call. */
    double longestMilliseconds() {
        double found = longest;
        longest = 0;
        return found;
    }

    /** Returns what that event did. */
    String what() {
        return what;
    }

    void stop() {
        ended = true;
    }
}
