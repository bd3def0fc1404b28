// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.Map;

/**
 * The bench that is wanted.
 *
 * @param driverId which driver
 * @param settings values of the driver's settings as text, by id; the others keep their defaults
 */
public record BenchChoice(String driverId, Map<String, String> settings) {
    public BenchChoice {
        settings = Map.copyOf(settings);
    }
}
