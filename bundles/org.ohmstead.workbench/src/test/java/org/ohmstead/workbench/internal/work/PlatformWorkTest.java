// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.core.runtime.jobs.IJobChangeEvent;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.core.runtime.jobs.JobChangeAdapter;
import org.eclipse.swt.widgets.Display;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class PlatformWorkTest {
    private static final int DEADLINE_MILLISECONDS = 10_000;

    private final Display display = Display.getDefault();
    private final List<Job> ended = new ArrayList<>();
    private final JobChangeAdapter keeper = new JobChangeAdapter() {
        @Override
        public void done(IJobChangeEvent event) {
            synchronized (ended) {
                ended.add(event.getJob());
            }
        }
    };

    @BeforeEach
    void listen() {
        Job.getJobManager().addJobChangeListener(keeper);
    }

    @AfterEach
    void listenNoMore() {
        Job.getJobManager().removeJobChangeListener(keeper);
    }

    /** What a work was about can be collected while somebody, such as the platform, still has the job that did it. */
    @Test
    void keepsNothingOfAWorkThatHasEnded() {
        List<Integer> heard = new ArrayList<>();
        WeakReference<byte[]> about = startAbout(heard);
        pumpUntil(heard, about);
        assertEquals(List.of(1000), heard);
        synchronized (ended) {
            assertEquals(List.of("Measure it"), ended.stream().map(Job::getName).toList());
        }
        assertTrue(about.refersTo(null), "the job keeps what it was about");
    }

    private WeakReference<byte[]> startAbout(List<Integer> heard) {
        byte[] large = new byte[1000];
        new PlatformWork(display)
                .start(
                        "Measure it",
                        progress -> large.length,
                        length -> heard.add(Math.max(length, large.length)),
                        e -> {
                            throw new AssertionError(e);
                        });
        return new WeakReference<>(large);
    }

    private void pumpUntil(List<Integer> heard, WeakReference<byte[]> about) {
        boolean[] late = {false};
        Runnable alarm = () -> late[0] = true;
        display.timerExec(DEADLINE_MILLISECONDS, alarm);
        while ((heard.isEmpty() || about.get() != null) && !late[0]) {
            if (!display.readAndDispatch()) {
                System.gc();
            }
        }
        display.timerExec(-1, alarm);
    }
}
