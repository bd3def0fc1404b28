// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.Optional;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;

/**
 * One resistor in a network.
 *
 * @param id what it is called in the notation: the id of a part of the stock, or its value
 * @param ohms resistance in ohms when cold, above 0
 * @param toleranceRatio 0 to 1: 0.05 is 5 %
 * @param rating its power rating; empty when only its value is known
 * @param traits what else is known of it
 */
public record Resistor(String id, double ohms, double toleranceRatio, Optional<PowerRating> rating, PartTraits traits) {
    public Resistor {
        Checks.named(id, "resistor id");
        Checks.positive(ohms, "ohms");
        Checks.within(toleranceRatio, 0, 1, "toleranceRatio");
        Checks.present(rating, "rating");
        Checks.present(traits, "traits");
    }

    /** Returns one of a part of the stock. */
    public static Resistor of(Part part) {
        PowerRating rating = new PowerRating(part.ratedWatts(), part.ratedToCelsius(), part.zeroPowerCelsius());
        return new Resistor(part.id(), part.ohms(), part.toleranceRatio(), Optional.of(rating), part.traits());
    }

    /** Returns a resistor of which only the value and the tolerance are known. */
    public static Resistor of(String id, double ohms, double toleranceRatio) {
        return new Resistor(id, ohms, toleranceRatio, Optional.empty(), PartTraits.NONE);
    }
}
