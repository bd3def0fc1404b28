// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;

/**
 * A load of the bench: one branch for each channel, or a single one for bridged and single use.
 *
 * @param id short name, unique among the loads
 * @param nominalOhms the value it stands for in ratings and tables, in ohms, above 0
 * @param branches its resistances, first channel first; at least one
 * @param powerLimitWatts what each branch can take for as long as a step lasts, in watts, above 0
 */
public record BenchLoad(String id, double nominalOhms, List<LoadBranch> branches, double powerLimitWatts) {
    public BenchLoad {
        Checks.named(id, "load id");
        Checks.positive(nominalOhms, "nominalOhms");
        branches = List.copyOf(branches);
        if (branches.isEmpty()) {
            throw new IllegalArgumentException("branches is empty; a load needs at least one resistance");
        }
        Checks.positive(powerLimitWatts, "powerLimitWatts");
    }

    /** Returns this load with another id. */
    public BenchLoad withId(String newId) {
        return new BenchLoad(newId, nominalOhms, branches, powerLimitWatts);
    }

    /** Returns this load with another nominal value in ohms. */
    public BenchLoad withNominalOhms(double newNominalOhms) {
        return new BenchLoad(id, newNominalOhms, branches, powerLimitWatts);
    }

    /** Returns this load with other branches. */
    public BenchLoad withBranches(List<LoadBranch> newBranches) {
        return new BenchLoad(id, nominalOhms, newBranches, powerLimitWatts);
    }

    /** Returns this load with another power limit in watts. */
    public BenchLoad withPowerLimitWatts(double newPowerLimitWatts) {
        return new BenchLoad(id, nominalOhms, branches, newPowerLimitWatts);
    }
}
