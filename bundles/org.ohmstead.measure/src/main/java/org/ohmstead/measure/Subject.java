// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;

/**
 * What is measured: a step of a project's plan.
 *
 * @param project the whole project, for its amplifier, meters and ratings
 * @param step one of its plan
 */
public record Subject(Project project, Step step) {
    public Subject {
        Checks.present(project, "project");
        Checks.present(step, "step");
        if (project.load(step.loadId()).isEmpty()) {
            throw new IllegalArgumentException(
                    "step names the load \"" + step.loadId() + "\", which project does not have");
        }
    }

    /** Returns the load of the step. */
    public BenchLoad load() {
        return project.load(step.loadId()).orElseThrow();
    }

    /** Returns the number of channels that are measured at once: all in stereo, else one. */
    public int channelCount() {
        return step.mode() == org.ohmstead.model.Mode.STEREO
                ? project.amplifier().channelCount()
                : 1;
    }
}
