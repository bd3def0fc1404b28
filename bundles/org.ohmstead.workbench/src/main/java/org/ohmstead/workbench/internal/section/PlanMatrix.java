// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.workbench.look.Numbers;

/**
 * A block of steps to add to the plan: every mode with every load, every supply voltage and every stimulus.
 *
 * @param modes how the channels meet the load
 * @param loadIds which loads
 * @param supplyVolts direct volts at the amplifier's terminals, each above 0
 * @param stimuli what is fed in
 * @param endPoint what ends each search
 * @param lowLoadsConfirmed whether steps below the lowest load that the maker allows are added as confirmed
 */
record PlanMatrix(
        List<Mode> modes,
        List<String> loadIds,
        List<Double> supplyVolts,
        List<Stimulus> stimuli,
        EndPoint endPoint,
        boolean lowLoadsConfirmed) {
    PlanMatrix {
        modes = List.copyOf(modes);
        loadIds = List.copyOf(loadIds);
        supplyVolts = List.copyOf(supplyVolts);
        stimuli = List.copyOf(stimuli);
    }

    /** Returns how many steps the block has, those that are in the plan already included. */
    int size() {
        return modes.size() * loadIds.size() * supplyVolts.size() * stimuli.size();
    }

    /** Returns the steps of the block that the plan does not have yet, with ids that are free in it. */
    List<Step> missingIn(Project project) {
        Set<String> ids = new HashSet<>();
        project.plan().forEach(step -> ids.add(step.id()));
        List<Step> missing = new ArrayList<>();
        for (Mode mode : modes) {
            for (Stimulus stimulus : stimuli) {
                for (String loadId : loadIds) {
                    for (double volts : supplyVolts) {
                        boolean confirmed = lowLoadsConfirmed && belowLowest(project, mode, loadId);
                        Step step = new Step(
                                freeId(mode, loadId, volts, stimulus, ids),
                                mode,
                                loadId,
                                volts,
                                stimulus,
                                endPoint,
                                confirmed);
                        if (project.plan().stream().noneMatch(there -> same(there, step))) {
                            missing.add(step);
                            ids.add(step.id());
                        }
                    }
                }
            }
        }
        return List.copyOf(missing);
    }

    /** Returns whether a step with a load in a mode works below the lowest load that the maker allows. */
    static boolean belowLowest(Project project, Mode mode, String loadId) {
        OptionalDouble lowest = project.amplifier().lowestLoadOhms(mode);
        return lowest.isPresent()
                && project.load(loadId)
                        .map(load -> load.nominalOhms() < lowest.getAsDouble() * (1 - 1e-9))
                        .orElse(false);
    }

    private static boolean same(Step there, Step step) {
        return there.withId(step.id())
                .withBelowLowestLoadConfirmed(step.belowLowestLoadConfirmed())
                .equals(step);
    }

    private static String freeId(Mode mode, String loadId, double volts, Stimulus stimulus, Set<String> taken) {
        String burst = stimulus instanceof Stimulus.ToneBurst ? "burst-" : "";
        String id = burst + mode.name().toLowerCase(Locale.ROOT) + "-" + loadId + "-" + voltsCode(volts);
        if (taken.contains(id)) {
            id += "-" + numberInId(stimulus.frequencyHz()) + "Hz";
        }
        return FreshIds.freeOf(id, taken);
    }

    /** Ids are the same whatever language and decimal sign the user has chosen. */
    private static String numberInId(double value) {
        return Numbers.withPoint(() -> Words.number(value));
    }

    private static String voltsCode(double volts) {
        String number = numberInId(volts);
        return number.contains(".") ? number.replace('.', 'V') : number + "V";
    }
}
