// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rest;

class ScheduleChangeTest extends ForecastStage {
    private Project project(String... ids) throws Exception {
        stage.withProject().open();
        Project demo = stage.project();
        return demo.withPlan(
                List.of(ids).stream().map(id -> demo.plan().get(0).withId(id)).toList());
    }

    private static List<String> ids(Project project) {
        return project.plan().stream().map(step -> step.id()).toList();
    }

    private static List<Rest> rests(Project project) {
        return project.heat().pacing().rests();
    }

    @Test
    void movesBeforeAnotherAndToTheEnd() throws Exception {
        Project project = project("a", "b", "c", "d");
        assertEquals(List.of("c", "a", "b", "d"), ids(new ScheduleChange.Moving("c", "a").apply(project)));
        assertEquals(List.of("b", "a", "c", "d"), ids(new ScheduleChange.Moving("a", "c").apply(project)));
        assertEquals(List.of("a", "c", "d", "b"), ids(new ScheduleChange.Moving("b", "").apply(project)));
        assertEquals(project, new ScheduleChange.Moving("b", "b").apply(project));
        assertEquals(project, new ScheduleChange.Moving("nobody", "a").apply(project));
    }

    @Test
    void changesARestInItsPlaceAndTakesItAway() throws Exception {
        Project one = new ScheduleChange.Resting("b", 30).apply(project("a", "b", "c"));
        assertEquals(List.of(new Rest("b", 30)), rests(one));
        Project two = new ScheduleChange.Resting("c", 5).apply(one);
        assertEquals(
                List.of(new Rest("b", 45), new Rest("c", 5)), rests(new ScheduleChange.Resting("b", 45).apply(two)));
        assertEquals(List.of(new Rest("c", 5)), rests(new ScheduleChange.Resting("b", 0).apply(two)));
        assertEquals(one, new ScheduleChange.Resting("a", 0).apply(one));
    }

    @Test
    void anOrderLeavesWhatItDoesNotNameBehindItsNeighbour() throws Exception {
        Project project = project("a", "b", "c", "d");
        assertEquals(List.of("d", "c", "b", "a"), ids(ScheduleChange.ordered(project, List.of("d", "c", "b", "a"))));
        // What cannot be scheduled stays behind the step that it came after; the first stays the first.
        assertEquals(
                List.of("c", "d", "b"),
                ids(ScheduleChange.ordered(project, List.of("c", "b"))).stream()
                        .filter(id -> !id.equals("a"))
                        .toList());
        assertEquals(
                "a", ids(ScheduleChange.ordered(project, List.of("c", "b"))).get(0));
        assertEquals(ids(project), ids(ScheduleChange.ordered(project, List.of("warm-up", "a", "b", "c", "d"))));
    }
}
