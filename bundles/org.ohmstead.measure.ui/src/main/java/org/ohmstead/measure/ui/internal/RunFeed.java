// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.ProgressView;
import org.ohmstead.measure.engine.RunListener;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.session.BackgroundWork;

/** Hears a run on its thread and hands what happened over to the user interface's, many events as one when they come fast. */
final class RunFeed implements RunListener {
    private final BackgroundWork work;
    private final Consumer<News> told;
    private News news = News.NONE;
    private boolean asked;

    /**
     * An end of an item.
     *
     * @param item which
     * @param outcome how it ended
     */
    record Ended(PlanItem item, RunOutcome outcome) {}

    /**
     * How far the item at hand is.
     *
     * @param item which
     * @param view how far
     */
    record Progressed(PlanItem item, ProgressView view) {}

    /**
     * A rest.
     *
     * @param item before which
     * @param left how long it still takes; zero at its end
     */
    record Resting(PlanItem item, Duration left) {}

    /**
     * What happened since the last time.
     *
     * @param changed whether all stands otherwise now
     * @param progressed how far the item at hand is, the latest
     * @param resting the latest of a rest
     * @param ended the ends of items, in order
     * @param logged whether something came into the log
     */
    record News(
            boolean changed,
            Optional<Progressed> progressed,
            Optional<Resting> resting,
            List<Ended> ended,
            boolean logged) {
        static final News NONE = new News(false, Optional.empty(), Optional.empty(), List.of(), false);
    }

    RunFeed(BackgroundWork work, Consumer<News> told) {
        this.work = work;
        this.told = told;
    }

    // Told by several threads; how all stands is asked for when it is handed over, so that the newest counts.
    @Override
    public void changed(PlanState state) {
        add(before -> new News(true, before.progressed(), before.resting(), before.ended(), before.logged()));
    }

    @Override
    public void progress(PlanItem item, ProgressView progress) {
        add(before -> new News(
                before.changed(),
                Optional.of(new Progressed(item, progress)),
                before.resting(),
                before.ended(),
                before.logged()));
    }

    @Override
    public void resting(PlanItem item, Duration left) {
        add(before -> new News(
                before.changed(),
                before.progressed(),
                Optional.of(new Resting(item, left)),
                before.ended(),
                before.logged()));
    }

    @Override
    public void logged(LogEntry entry) {
        add(before -> new News(before.changed(), before.progressed(), before.resting(), before.ended(), true));
    }

    @Override
    public void ended(PlanItem item, RunOutcome outcome) {
        add(before -> {
            List<Ended> all = new ArrayList<>(before.ended());
            all.add(new Ended(item, outcome));
            return new News(before.changed(), before.progressed(), before.resting(), List.copyOf(all), before.logged());
        });
    }

    private interface Addition {
        News to(News before);
    }

    // Asked for under the lock, so that whoever adds something and then asks for more is handed over in that order.
    private synchronized void add(Addition addition) {
        news = addition.to(news);
        if (!asked) {
            asked = true;
            work.later(this::hand);
        }
    }

    private void hand() {
        News now;
        synchronized (this) {
            now = news;
            news = News.NONE;
            asked = false;
        }
        told.accept(now);
    }
}
