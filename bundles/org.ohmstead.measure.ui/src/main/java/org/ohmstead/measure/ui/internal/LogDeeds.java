// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.model.Problem;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;

/** What the person decides and the log keeps: done in the background, with a name and a reason. */
final class LogDeeds {
    private static final Messages TEXTS = Messages.of(LogDeeds.class);

    private final BackgroundWork work;
    private final Supplier<Optional<OpenRun>> open;
    private final Runnable refused;
    private final Consumer<Exception> failed;
    private final ReentrantLock alone = new ReentrantLock();

    /**
     * Makes them.
     *
     * @param open the plan that is open
     * @param refused runs when none is
     * @param failed hears why the log could not be written to
     */
    LogDeeds(BackgroundWork work, Supplier<Optional<OpenRun>> open, Runnable refused, Consumer<Exception> failed) {
        this.work = work;
        this.open = open;
        this.refused = refused;
        this.failed = failed;
    }

    /** What is done with the log of a plan. */
    private interface Deed {
        void on(PlanRun run) throws TestLogException;
    }

    /** What has the plan to itself. */
    interface Lone {
        Object run() throws TestLogException;
    }

    /**
     * Does something while nobody looks at the log anew: what is found there would take the place of what was done meanwhile.
     *
     * @return what it returns
     */
    Object aloneWith(Lone what) throws TestLogException {
        alone.lock();
        try {
            return what.run();
        } finally {
            alone.unlock();
        }
    }

    private void actAlone(String title, Deed deed) {
        act(
                title,
                run -> aloneWith(() -> {
                    deed.on(run);
                    return run;
                }));
    }

    private void act(String title, Deed deed) {
        Optional<OpenRun> now = open.get();
        if (now.isEmpty()) {
            refused.run();
            return;
        }
        work.start(
                title,
                progress -> {
                    deed.on(now.get().run());
                    return true;
                },
                done -> {},
                failed);
    }

    /** Leaves an item out. */
    void skip(PlanItem item, String reason, String who) {
        actAlone(TEXTS.text("job.skipping", item.stepId()), run -> run.skip(item, reason, who));
    }

    /** Takes an entry of the log back. */
    void voidEntry(String entryId, String reason, String who) {
        actAlone(TEXTS.text("job.voiding", entryId), run -> run.voidEntry(entryId, reason, who));
    }

    /** Adds a remark to the log. */
    void note(String text, String who) {
        act(TEXTS.text("job.noting"), run -> run.note(text, who));
    }

    /** Says yes to warnings before steps. */
    void confirm(List<Warned> warned, String reason, String who) {
        act(TEXTS.text("job.confirming"), run -> {
            for (Warned each : warned) {
                run.confirm(each.stepId(), each.problem(), who, reason);
            }
        });
    }

    /**
     * A warning before a step.
     *
     * @param stepId which step
     * @param problem what it is warned of
     */
    record Warned(String stepId, Problem problem) {}

    /** Allows runs again after an emergency stop. */
    void release(String who) {
        act(TEXTS.text("job.releasing"), run -> run.release(who));
    }

    /** Ends what runs in an orderly way; at once. */
    void cancel(String who) {
        open.get().ifPresent(now -> now.run().cancel(who));
    }

    /** Ends the rest before an item; at once. */
    void goOnNow() {
        open.get().ifPresent(now -> now.run().endRest());
    }

    /** Looks at the log anew, after somebody else may have changed it. */
    void refresh() {
        actAlone(TEXTS.text("job.looking"), PlanRun::refresh);
    }
}
