// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * The lowest load that the maker allows in one mode.
 *
 * @param mode how the channels meet the load
 * @param loadOhms in ohms, above 0
 */
public record LowestLoad(Mode mode, double loadOhms) {
    public LowestLoad {
        Checks.present(mode, "mode");
        Checks.positive(loadOhms, "loadOhms");
    }

    /** Returns this limit with another mode. */
    public LowestLoad withMode(Mode newMode) {
        return new LowestLoad(newMode, loadOhms);
    }

    /** Returns this limit with another load in ohms. */
    public LowestLoad withLoadOhms(double newLoadOhms) {
        return new LowestLoad(mode, newLoadOhms);
    }
}
