// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.DriverUsed;

/**
 * A run that gave a result, with all that the result depended on.
 *
 * @param subject what was measured
 * @param measurement by what
 * @param settings values of all its settings as text, by id
 * @param driver on which bench
 * @param result what it found, checked
 * @param captures what it recorded, in order
 * @param last what the meters last showed
 */
public record RunRecord(
        Subject subject,
        MeasurementInfo measurement,
        Map<String, String> settings,
        DriverUsed driver,
        MeasurementResult result,
        List<KeptCapture> captures,
        Optional<Observation> last) {
    public RunRecord {
        settings = Map.copyOf(settings);
        captures = List.copyOf(captures);
    }
}
