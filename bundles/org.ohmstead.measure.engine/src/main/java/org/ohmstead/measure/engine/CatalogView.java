// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.model.Problem;

/**
 * The catalog at a moment.
 *
 * @param measurements what can be measured, in the order of their ids; those set aside are among them
 * @param drivers the bench drivers, in the order of their ids; those set aside are among them
 * @param plugins all plug-ins that are known, by kind and id
 * @param problems what is wrong with plug-ins: two with the same id, one that gives no information, faults, set aside
 */
public record CatalogView(
        List<MeasurementInfo> measurements,
        List<DriverInfo> drivers,
        List<PluginView> plugins,
        List<Problem> problems) {
    public CatalogView {
        measurements = List.copyOf(measurements);
        drivers = List.copyOf(drivers);
        plugins = List.copyOf(plugins);
        problems = List.copyOf(problems);
    }
}
