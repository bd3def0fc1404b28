// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;

class StepStartTest {
    @TempDir
    Path folder;

    private HeatStage stage;
    private Project project;

    @BeforeEach
    void setUp() throws Exception {
        stage = new HeatStage(folder);
        stage.withProject().open();
        project = stage.project();
    }

    @AfterEach
    void tearDown() {
        stage.close();
    }

    private Step stereo() {
        return project.plan().stream()
                .filter(step -> step.mode() == Mode.STEREO && step.stimulus() instanceof Stimulus.ContinuousSine)
                .findFirst()
                .orElseThrow();
    }

    private static Reading reading(Step step, double firstWatts, double secondWatts) {
        return new Reading(
                step.id(),
                step.mode(),
                step.loadId(),
                8,
                step.stimulus(),
                step.endPoint(),
                Instant.parse("2026-03-02T10:00:00Z"),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                List.of(channel("A", firstWatts), channel("B", secondWatts)),
                new Provenance("r", "p", "1", "1", "", List.of(), List.of()),
                List.of());
    }

    private static ChannelReading channel(String name, double watts) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                8,
                watts,
                0.1,
                Math.sqrt(8 * watts),
                1000,
                0.01,
                12,
                OptionalDouble.of(10),
                List.of(),
                List.of(),
                List.of());
    }

    @Test
    void theLatestReadingGoesBeforeRatings() {
        Step step = stereo();
        StepStart start = StepStart.of(project, step, List.of(reading(step, 10, 10), reading(step, 40, 44)));
        assertEquals(OptionalDouble.of(42), start.powerWatts(), "the mean of the channels");
        assertEquals(OptionalDouble.of(120), start.measuredInputWatts(), "12 V times 10 A");
        assertTrue(start.origin().contains("readings"), start.origin());
    }

    @Test
    void withoutAReadingARatingTells() {
        StepStart start = StepStart.of(project, stereo(), List.of());
        assertTrue(start.powerWatts().isPresent());
        assertEquals(OptionalDouble.empty(), start.measuredInputWatts());
        assertTrue(start.origin().contains("rating"), start.origin());
    }

    @Test
    void saysSoWhenNothingTells() {
        Step step = stereo();
        StepStart start = StepStart.of(project.withLoads(List.of()), step, List.of());
        assertEquals(OptionalDouble.empty(), start.powerWatts());
        assertTrue(start.origin().contains("has no load"), start.origin());
        Project unrated = project.withAmplifier(project.amplifier().withRatings(List.of()));
        assertEquals(
                OptionalDouble.empty(), StepStart.of(unrated, step, List.of()).powerWatts());
    }
}
