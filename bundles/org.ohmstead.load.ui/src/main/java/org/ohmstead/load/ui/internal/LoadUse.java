// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkImpedance;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Numbers;

/** Writes a network into the loads of a project. */
final class LoadUse {
    private static final double LOW_HZ = 1;

    private LoadUse() {}

    /** Returns a branch of a network: its value, uncertain by the tolerances until it is measured, and its inductance. */
    static LoadBranch branch(FoundNetwork found) {
        return new LoadBranch(
                found.ohms(),
                found.standardRatio() * found.ohms(),
                inductanceHenries(found.network()),
                found.notation());
    }

    /** Returns the inductance in series that a network shows at low frequencies; resistors of unknown inductance have none. */
    static double inductanceHenries(Network network) {
        return NetworkImpedance.of(network).at(LOW_HZ).reactanceOhms() / (2 * Math.PI * LOW_HZ);
    }

    /**
     * Returns the change that writes a network into all branches of a load, or makes a load of it.
     *
     * @param loadId which load; empty for a new one
     */
    static UnaryOperator<Project> change(FoundNetwork found, Target target, Optional<String> loadId) {
        return project -> project.withLoads(
                loadId.flatMap(project::load).isPresent()
                        ? replaced(project.loads(), loadId.get(), found, target)
                        : added(project.loads(), found, target));
    }

    private static List<BenchLoad> replaced(List<BenchLoad> loads, String id, FoundNetwork found, Target target) {
        return loads.stream()
                .map(load -> load.id().equals(id)
                        ? load.withBranches(branches(found, branchCount(load, target)))
                                .withPowerLimitWatts(limit(found, load.powerLimitWatts()))
                        : load)
                .toList();
    }

    private static List<BenchLoad> added(List<BenchLoad> loads, FoundNetwork found, Target target) {
        List<BenchLoad> all = new ArrayList<>(loads);
        double limit = limit(found, target.powerWatts().orElse(1));
        all.add(new BenchLoad(
                freshId(loads, target.ohms()),
                target.ohms(),
                branches(found, target.arrangement().branches()),
                limit));
        return all;
    }

    /** A load does not lose a branch that steps of the plan may need. */
    private static int branchCount(BenchLoad load, Target target) {
        return Math.max(load.branches().size(), target.arrangement().branches());
    }

    private static List<LoadBranch> branches(FoundNetwork found, int count) {
        return Collections.nCopies(count, branch(found));
    }

    /** A load needs a limit above 0; where the network's is not known, the one given stays. */
    private static double limit(FoundNetwork found, double otherwise) {
        double known = found.powerLimitWatts().orElse(otherwise);
        return known > 0 ? known : otherwise;
    }

    /** Returns the name that a new load of so many ohms gets: "4ohm", or "4ohm-2" when that is taken. */
    static String freshId(List<BenchLoad> loads, double ohms) {
        List<String> taken = loads.stream().map(BenchLoad::id).toList();
        String wanted = Numbers.withPoint(() -> Words.number(ohms)) + "ohm";
        String id = wanted;
        for (int number = 2; taken.contains(id); number++) {
            id = wanted + "-" + number;
        }
        return id;
    }
}
