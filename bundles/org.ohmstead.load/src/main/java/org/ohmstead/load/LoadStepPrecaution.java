// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.osgi.service.component.annotations.Component;

/**
 * The precautions of a step's load, and the output power beyond which the step is stopped so that the weakest branch of the load lasts; in
 * a running framework a service.
 */
@Component
public final class LoadStepPrecaution implements Precaution {
    private static final String ID = "org.ohmstead.load";

    /** Makes the service, which keeps nothing. */
    public LoadStepPrecaution() {
        // for the framework
    }

    @Override
    public String id() {
        return ID;
    }

    /** Returns what {@link LoadPrecautions} has to say, with the power to expect from the ratings. */
    @Override
    public List<Problem> check(Project project, Step step) {
        return LoadPrecautions.check(project, step, OptionalDouble.empty());
    }

    /** Returns the mean output power that each branch bears for as long as a step lasts; none when the load does not exist. */
    @Override
    public List<StopLimit> stopLimits(Project project, Step step) {
        Checks.present(project, "project");
        Checks.present(step, "step");
        long channels = step.mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
        return project.load(step.loadId()).stream()
                .flatMap(load -> load.branches().stream()
                        .limit(channels)
                        .map(branch -> BranchLimit.of(project, step, load, branch)))
                .min(Comparator.comparingDouble(BranchLimit::watts))
                .map(limit -> new StopLimit(StopLimit.Quantity.OUTPUT_WATTS, limit.watts(), limit.reason()))
                .stream()
                .toList();
    }
}
