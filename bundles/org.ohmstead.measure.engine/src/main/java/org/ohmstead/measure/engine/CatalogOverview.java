// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.model.Problem;

/** Makes a view of the catalog out of what it knows. */
record CatalogOverview(Map<Plugin<?, ?>, String> lastFaults, Map<String, Integer> faults, List<Problem> problems) {
    CatalogView view() {
        List<MeasurementInfo> measurements = new ArrayList<>();
        List<DriverInfo> drivers = new ArrayList<>();
        List<PluginView> plugins = new ArrayList<>();
        lastFaults.forEach((plugin, lastFault) -> {
            if (plugin.info() instanceof MeasurementInfo info) {
                measurements.add(info);
            } else if (plugin.info() instanceof DriverInfo info) {
                drivers.add(info);
            }
            int count = faults.getOrDefault(plugin.key(), 0);
            plugins.add(new PluginView(
                    plugin.kind(),
                    plugin.id(),
                    plugin.name().shown(),
                    plugin.version(),
                    count,
                    count >= Catalog.FAULTS_UNTIL_SET_ASIDE,
                    lastFault));
        });
        return new CatalogView(measurements, drivers, plugins, problems);
    }
}
