// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.measure.engine.DryRun;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.model.Problem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;

/** Goes through the plan in the background; of several times only the one that was asked for last counts. */
final class DryRuns {
    private static final Messages TEXTS = Messages.of(DryRuns.class);

    private final BackgroundWork work;
    private final Runnable changed;
    private final Consumer<Exception> failed;
    private Optional<DryRun> found = Optional.empty();
    private long asked;
    private long done;

    DryRuns(BackgroundWork work, Runnable changed, Consumer<Exception> failed) {
        this.work = work;
        this.changed = changed;
        this.failed = failed;
    }

    /** Goes through a plan. */
    void ask(PlanRun run) {
        asked++;
        long mine = asked;
        work.start(
                TEXTS.text("job.checking"), progress -> run.dryRun(), now -> take(mine, Optional.of(now)), failure -> {
                    take(mine, found);
                    failed.accept(failure);
                });
    }

    private void take(long mine, Optional<DryRun> now) {
        if (mine == asked) {
            done = mine;
            found = now;
            changed.run();
        }
    }

    /** Forgets what was found: another plan is open. */
    void forget() {
        asked++;
        done = asked;
        found = Optional.empty();
    }

    /** Returns what was found last. */
    Optional<DryRun> found() {
        return found;
    }

    /** Returns what was found of an item. */
    Optional<DryStep> of(PlanItem item) {
        return found.flatMap(all ->
                all.steps().stream().filter(step -> step.item().equals(item)).findFirst());
    }

    /** Returns the items at which nobody has said yes to the same warning, this one among them. */
    List<LogDeeds.Warned> alike(Problem problem) {
        return found.map(DryRun::steps).orElse(List.of()).stream()
                .flatMap(step -> step.unconfirmed().stream()
                        .filter(each -> each.what().equals(problem.what()))
                        .map(each -> new LogDeeds.Warned(step.item().stepId(), each)))
                .distinct()
                .toList();
    }

    /** Returns whether a plan is being gone through. */
    boolean busy() {
        return asked != done;
    }
}
