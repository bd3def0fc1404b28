// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.session.LogSnapshot;

/** How the plan stands and what goes on in it, as it is heard. User interface's thread only. */
final class RunCourse {
    private final RunProgress progress;
    private Optional<PlanState> state = Optional.empty();
    private Optional<RunFeed.Resting> rest = Optional.empty();
    private Optional<RunFeed.Ended> ended = Optional.empty();
    private List<ItemRow> rows = List.of();

    RunCourse(RunProgress progress) {
        this.progress = progress;
    }

    /** Hears what happened. */
    void hear(OpenRun open, RunFeed.News news) {
        Project project = open.order().project();
        if (news.changed()) {
            PlanState now = open.run().state();
            state = Optional.of(now);
            now.running().ifPresent(item -> progress.begin(item.item(), project));
        }
        news.resting()
                .ifPresent(now ->
                        rest = Optional.of(now).filter(each -> !each.left().isZero()));
        news.progressed().ifPresent(now -> {
            progress.begin(now.item(), project);
            progress.progressed(now.view());
        });
        for (RunFeed.Ended each : news.ended()) {
            ended = Optional.of(each);
            progress.end(
                    each.outcome() instanceof RunOutcome.Finished finished
                            ? finished.record().result().power()
                            : Optional.empty());
        }
    }

    /** A plan was opened, or none is any more. */
    void turnTo(Optional<PlanState> newState) {
        state = newState;
        rest = Optional.empty();
    }

    /** A run begins. */
    void begin() {
        ended = Optional.empty();
    }

    /** A run has ended, whatever was heard of it. */
    void end() {
        rest = Optional.empty();
    }

    /** Forgets everything: another project is open. */
    void forget() {
        turnTo(Optional.empty());
        ended = Optional.empty();
        rows = List.of();
        progress.forget();
    }

    /**
     * Says the rows anew.
     *
     * @param items what is to be measured, as long as no plan is open
     */
    void sayRows(Optional<Project> project, List<PlanItem> items, CatalogView catalog, LogSnapshot log) {
        if (project.isEmpty()) {
            rows = List.of();
            return;
        }
        RowMaker maker = RowMaker.of(project.get(), catalog, log, rest.map(RunFeed.Resting::item));
        rows = state.isPresent() ? maker.rows(state.get().items()) : maker.unknown(items);
    }

    /** Returns the plan's items in words. */
    List<ItemRow> rows() {
        return rows;
    }

    /** Returns the item at hand: which runs, before which the amplifier rests, or which is the next. */
    Optional<ItemRow> atHand() {
        return rows.stream()
                .filter(row -> row.status() == ItemRow.Status.RUNNING || row.status() == ItemRow.Status.RESTING)
                .findFirst()
                .or(this::next);
    }

    /** Returns the first item that is still to be done. */
    Optional<ItemRow> next() {
        return rows.stream().filter(ItemRow::open).findFirst();
    }

    /** Returns the rest that goes on. */
    Optional<RunFeed.Resting> rest() {
        return rest;
    }

    /** Returns how the last item ended; empty while the first of a run goes on. */
    Optional<RunFeed.Ended> ended() {
        return ended;
    }

    /** Returns what is known of the item that is being measured, or was last. */
    RunProgress progress() {
        return progress;
    }

    /** Returns whether the emergency stop is pressed. */
    boolean halted() {
        return state.filter(PlanState::halted).isPresent();
    }
}
