// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Reading;

/**
 * What a measurement found.
 *
 * @param figures at least one, or a reading
 * @param power a reading of power at an end point, when it is one
 * @param notes whole sentences about it
 */
public record MeasurementResult(List<Figure> figures, Optional<Reading> power, List<String> notes) {
    public MeasurementResult {
        figures = List.copyOf(figures);
        Checks.present(power, "power");
        if (figures.isEmpty() && power.isEmpty()) {
            throw new IllegalArgumentException("figures is empty; a result needs at least one, or a reading of power");
        }
        notes = List.copyOf(notes);
    }

    /** Returns a result of figures alone. */
    public static MeasurementResult of(Figure... figures) {
        return new MeasurementResult(List.of(figures), Optional.empty(), List.of());
    }
}
