// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
import java.util.Optional;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;

/** What people must put right before the laboratory's shared log goes on. A server that is away for a while is none of it. */
final class SharingProblems implements ProblemProvider, DeskListener {
    private static final Messages TEXTS = Messages.of(SharingProblems.class);
    private static final String PLACE = "$.sharedLog";

    private final Runnable changed;
    private volatile SharingState state = SharingState.OFF;

    /**
     * Makes a provider that knows of no problem.
     *
     * @param changed runs when it has others to tell of
     */
    SharingProblems(Runnable changed) {
        this.changed = changed;
    }

    @Override
    public String name() {
        return TEXTS.text("shared.name");
    }

    @Override
    public void sharingChanged(SharingState now) {
        Optional<Problem> before = problem(state);
        state = now;
        // While it is tried again it still stands.
        if (!before.equals(problem(now))) {
            changed.run();
        }
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        return view.project().sharedLog().isEmpty()
                ? List.of()
                : problem(state).stream().toList();
    }

    private static Optional<Problem> problem(SharingState state) {
        return state.kind() == SharingState.Kind.STOPPED
                ? Optional.of(new Problem(
                        Severity.WARNING,
                        PLACE,
                        TEXTS.text("shared.stopped", state.place(), state.why()),
                        TEXTS.text("shared.stopped.remedy")))
                : Optional.empty();
    }
}
