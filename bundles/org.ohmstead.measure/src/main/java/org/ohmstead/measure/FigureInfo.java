// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import org.ohmstead.units.Unit;

/**
 * A figure that a measurement gives, as data.
 *
 * @param id short name, unique within the measurement
 * @param name what a person calls it, such as "damping factor"
 * @param unit its unit
 * @param perChannel whether there is one for each channel
 */
public record FigureInfo(String id, String name, Unit unit, boolean perChannel) {
    public FigureInfo {
        Checks.named(id, "id");
        Checks.named(name, "name");
        Checks.present(unit, "unit");
    }
}
