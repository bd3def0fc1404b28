// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Optional;

/**
 * One resistor of a load's network and its share of the load's power.
 *
 * @param name what it is called in the network; several may be alike
 * @param ohms its resistance in ohms, above 0
 * @param powerRatio its power over that of the network, 0 to 1; those of a network add up to 1
 * @param part what is known of it; empty for a mere resistance
 */
public record PartShare(String name, double ohms, double powerRatio, Optional<Part> part) {
    public PartShare {
        Checks.named(name, "name");
        Checks.positive(ohms, "ohms");
        Checks.within(powerRatio, 0, 1, "powerRatio");
        Checks.present(part, "part");
    }
}
