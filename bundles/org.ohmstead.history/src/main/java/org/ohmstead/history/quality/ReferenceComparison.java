// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.OptionalDouble;
import org.ohmstead.history.internal.Words;
import org.ohmstead.units.text.Messages;

/**
 * A value beside what it should be by a reference.
 *
 * @param value found on the bench
 * @param expandedUncertainty of the value with coverage factor 2, at least 0; empty when it is not known
 * @param reference what it should be
 * @param expandedReferenceUncertainty of the reference with coverage factor 2, at least 0; empty when it is not known
 * @param unit of all four; may be empty
 */
public record ReferenceComparison(
        double value,
        OptionalDouble expandedUncertainty,
        double reference,
        OptionalDouble expandedReferenceUncertainty,
        String unit) {
    private static final Messages TEXTS = Messages.of(ReferenceComparison.class);

    /** Returns the value minus the reference. */
    public double error() {
        return value - reference;
    }

    /**
     * Returns the E_n number: the error over the root of the sum of squares of both expanded uncertainties (ISO/IEC 17043; ISO 13528).
     * Empty when one of them is not known or both are 0.
     */
    public OptionalDouble enNumber() {
        if (expandedUncertainty.isEmpty() || expandedReferenceUncertainty.isEmpty()) {
            return OptionalDouble.empty();
        }
        double both = Math.hypot(expandedUncertainty.getAsDouble(), expandedReferenceUncertainty.getAsDouble());
        return both > 0 ? OptionalDouble.of(error() / both) : OptionalDouble.empty();
    }

    /** Returns whether the E_n number is there and lies beyond 1: the bench and the reference contradict each other. */
    public boolean contradicts() {
        return enNumber().isPresent() && Math.abs(enNumber().getAsDouble()) > 1;
    }

    /** Returns it in a whole sentence. */
    public String sentence() {
        String side = error() < 0 ? "reference.below" : "reference.above";
        OptionalDouble number = enNumber();
        return TEXTS.text(
                side + (number.isEmpty() ? ".unknown" : contradicts() ? ".beyond" : ".within"),
                Words.to(value, error(), unit),
                Words.uncertainty(Math.abs(error()), unit),
                Words.to(reference, error(), unit),
                number.isEmpty() ? "" : Words.uncertainty(number.getAsDouble()));
    }
}
