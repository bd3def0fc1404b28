// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rest;
import org.ohmstead.model.Step;
import org.ohmstead.units.text.Messages;

/** What the user does to the schedule, as an edit of the project. */
sealed interface ScheduleChange {
    Messages TEXTS = Messages.of(ScheduleChange.class);

    /** Returns the step that it is about. */
    String stepId();

    /** Returns what the edit is called, for undo. */
    String name();

    /** Returns the changed project. */
    Project apply(Project project);

    /**
     * Another rest before a step.
     *
     * @param stepId which step
     * @param seconds how long, at least 0; 0 takes the user's rest away
     */
    record Resting(String stepId, double seconds) implements ScheduleChange {
        @Override
        public String name() {
            return TEXTS.text(seconds > 0 ? "schedule.rest" : "schedule.noRest", stepId);
        }

        @Override
        public Project apply(Project project) {
            List<Rest> rests = new ArrayList<>(project.heat().pacing().rests());
            int index = 0;
            while (index < rests.size() && !rests.get(index).stepId().equals(stepId)) {
                index++;
            }
            if (index < rests.size()) {
                rests.remove(index);
            }
            if (seconds > 0) {
                rests.add(index, new Rest(stepId, seconds));
            }
            HeatData heat = project.heat();
            return project.withHeat(heat.withPacing(heat.pacing().withRests(rests)));
        }
    }

    /**
     * Another place of a step in the plan.
     *
     * @param stepId which step
     * @param beforeId the step that it comes before; empty text for the end
     */
    record Moving(String stepId, String beforeId) implements ScheduleChange {
        @Override
        public String name() {
            return TEXTS.text("schedule.move", stepId);
        }

        @Override
        public Project apply(Project project) {
            List<Step> plan = new ArrayList<>(project.plan());
            int from = index(plan, stepId);
            if (from < 0 || stepId.equals(beforeId)) {
                return project;
            }
            Step moved = plan.remove(from);
            int to = index(plan, beforeId);
            plan.add(to < 0 ? plan.size() : to, moved);
            return project.withPlan(plan);
        }

        private static int index(List<Step> plan, String id) {
            for (int index = 0; index < plan.size(); index++) {
                if (plan.get(index).id().equals(id)) {
                    return index;
                }
            }
            return -1;
        }
    }

    /** Returns a project with its steps in an order; steps that it does not name stay behind the one before them. */
    static Project ordered(Project project, List<String> ids) {
        List<Step> rest = new ArrayList<>(project.plan());
        List<Step> plan = new ArrayList<>();
        for (String id : ids) {
            rest.stream().filter(step -> step.id().equals(id)).findFirst().ifPresent(step -> {
                rest.remove(step);
                plan.add(step);
            });
        }
        for (Step left : rest) {
            int index = project.plan().indexOf(left);
            Step before = index == 0 ? null : project.plan().get(index - 1);
            plan.add(before == null ? 0 : plan.indexOf(before) + 1, left);
        }
        return project.withPlan(plan);
    }
}
