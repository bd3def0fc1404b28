// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.workbench.session.ProjectSession;

/** What is chosen for the open project, kept from one session of the workbench to the next. */
final class Chosen {
    private final ConsoleMemory memory;
    private final Plans plans;
    private volatile Choices choices = Choices.NONE;

    Chosen(ConsoleMemory memory, Plans plans) {
        this.memory = memory;
        this.plans = plans;
    }

    /** Turns to another project, or to none: then the last choices stay. */
    void turnTo(Optional<ProjectSession> session) {
        session.ifPresent(open -> choices = Choices.read(memory, key(open)));
    }

    private static String key(ProjectSession session) {
        return "project" + Integer.toHexString(session.folder().toString().hashCode());
    }

    /** Changes what is chosen. */
    void change(UnaryOperator<Choices> change, Optional<ProjectSession> session) {
        choices = change.apply(choices);
        session.ifPresent(open -> choices.write(memory, key(open)));
    }

    /** Returns what is chosen. Any thread. */
    Choices choices() {
        return choices;
    }

    /** Returns the settings that were last chosen for a bench driver. */
    Map<String, String> settings(String driverId) {
        return Choices.settings(memory, driverId);
    }

    /** Returns what is to be measured; nothing when no project is open. */
    List<PlanItem> items(Optional<ProjectSession> session) {
        return session.map(open -> choices.items(plans.items(open.project()))).orElse(List.of());
    }

    /** Returns the plan as it should be opened. */
    OpenRun.Order order(ProjectSession session) {
        return new OpenRun.Order(
                session.project(),
                session.revisionSha256(),
                session.folder(),
                session.logFile(),
                items(Optional.of(session)),
                choices.bench(),
                choices.operator());
    }
}
