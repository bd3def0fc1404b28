// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.function.Predicate;

/**
 * Parts of a power's uncertainty put together by the law of propagation (GUM 5.2.2): the sum of their squares, and for each correlation
 * twice the product of its parts with the coefficient. The coefficient is that of the inputs; since more load or more supply volts means
 * less power at the volts stated, the product counts as negative when one of the two parts is of that kind and the other is not.
 *
 * @param parts what makes the power uncertain
 * @param correlations of parts; those of parts that are not there do not count
 */
public record CombinedParts(List<UncertaintyPart> parts, List<PartCorrelation> correlations) {
    public CombinedParts {
        parts = List.copyOf(parts);
        correlations = List.copyOf(correlations);
    }

    /** Returns the parts of a channel's power. */
    public static CombinedParts of(ChannelReading channel) {
        return new CombinedParts(channel.uncertaintyParts(), channel.correlations());
    }

    /** Returns the standard uncertainty in watts of all parts together, at least 0. */
    public double watts() {
        return watts(part -> true);
    }

    /** Returns the standard uncertainty in watts of those parts that other readings share, or of those that they do not; at least 0. */
    public double watts(boolean shared) {
        return watts(part -> part.shared() == shared);
    }

    private double watts(Predicate<UncertaintyPart> which) {
        List<UncertaintyPart> some = parts.stream().filter(which).toList();
        double squares = some.stream()
                .mapToDouble(part -> part.standardUncertaintyWatts() * part.standardUncertaintyWatts())
                .sum();
        for (PartCorrelation correlation : correlations) {
            squares += 2
                    * correlation.coefficient()
                    * effect(some, correlation.first())
                    * effect(some, correlation.second());
        }
        return Math.sqrt(Math.max(0, squares));
    }

    /** Returns the effect on the power of a part that is one standard uncertainty too high, with its sign; 0 for one that is not there. */
    private static double effect(List<UncertaintyPart> parts, String source) {
        return parts.stream()
                .filter(part -> part.source().equals(source))
                .findFirst()
                .map(part -> direction(part) * part.standardUncertaintyWatts())
                .orElse(0.0);
    }

    private static double direction(UncertaintyPart part) {
        boolean falling = part.input()
                .map(input -> input == BudgetInput.LOAD_OHMS || input == BudgetInput.SUPPLY_VOLTS)
                .orElse(false);
        return falling ? -1 : 1;
    }
}
