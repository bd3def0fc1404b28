// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.measure.engine.ProgressView;
import org.ohmstead.measure.engine.RunListener;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * A run as work in the background, seen and cancelled in the Progress view too.
 *
 * @param title what is done
 * @param run the plan
 * @param operator who does it; may be empty
 * @param over counts down when it has ended
 */
record RunJob(String title, PlanRun run, String operator, CountDownLatch over) {
    private static final long LOOK_MILLIS = 200;
    private static final int PERCENT = 100;

    RunJob(String title, PlanRun run, String operator) {
        this(title, run, operator, new CountDownLatch(1));
    }

    /** What is to be done. */
    interface Work {
        /** Does it. The result is told to the plan's listeners. */
        Object on(PlanRun run) throws TestLogException;
    }

    /**
     * Starts it.
     *
     * @param ended told on the user interface's thread when it has ended, however it did
     * @param failed told why the log could not be written to
     */
    void start(BackgroundWork work, Work what, Runnable ended, Consumer<Exception> failed) {
        work.start(
                title,
                progress -> {
                    RunListener shown = new Shown(progress);
                    run.addListener(shown);
                    watch(progress);
                    try {
                        return what.on(run);
                    } finally {
                        run.removeListener(shown);
                        over.countDown();
                        // Not by the task's result, which is lost when somebody cancels.
                        work.later(ended);
                    }
                },
                done -> {},
                failed);
    }

    /** Passes a cancel on, also while a bench does not answer. */
    private void watch(WorkProgress progress) {
        Thread watching = new Thread(
                () -> {
                    try {
                        while (!over.await(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                            if (progress.cancelled()) {
                                run.cancel(operator);
                            }
                        }
                    } catch (InterruptedException told) {
                        Thread.currentThread().interrupt();
                    }
                },
                "ohmstead run watch");
        watching.setDaemon(true);
        watching.start();
    }

    private record Shown(WorkProgress progress) implements RunListener {
        @Override
        public void progress(PlanItem item, ProgressView view) {
            progress.step((int) (PERCENT * view.doneRatio()), PERCENT, item.stepId() + " " + view.what());
        }
    }
}
