// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.util.Optional;

/**
 * An instrument that a reading depended on, as it was that day.
 *
 * @param meterId id of the meter in the project
 * @param quantity what it read
 * @param name what it is
 * @param calibratedOn day of its last calibration, when known
 * @param overdue whether its calibration had run out
 */
public record InstrumentUsed(
        String meterId, MeterQuantity quantity, String name, Optional<LocalDate> calibratedOn, boolean overdue) {
    public InstrumentUsed {
        Checks.named(meterId, "meterId");
        Checks.present(quantity, "quantity");
        Checks.named(name, "name");
        Checks.present(calibratedOn, "calibratedOn");
    }
}
