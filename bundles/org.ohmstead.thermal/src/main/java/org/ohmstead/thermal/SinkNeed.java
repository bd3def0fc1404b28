// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.units.text.Messages;

/** What sink some devices need, by Ohm's law of heat: the drops from junction to case to sink to air add up. */
public final class SinkNeed {
    private static final Messages TEXTS = Messages.of(SinkNeed.class);

    private SinkNeed() {}

    /**
     * Returns the thermal resistance that a sink may have at most, in kelvins per watt.
     *
     * @param junctionCelsius what a junction may reach
     * @param airCelsius temperature of the air
     * @param deviceWatts heat of each device, above 0
     * @param devices how many share the sink, at least 1
     * @param deviceKelvinPerWatt from the junction of a device to the sink: junction to case, and the washer, at least 0
     */
    public static HeatAnswer mostKelvinPerWatt(
            double junctionCelsius, double airCelsius, double deviceWatts, int devices, double deviceKelvinPerWatt) {
        Checks.finite(junctionCelsius, "junctionCelsius");
        Checks.finite(airCelsius, "airCelsius");
        Checks.positive(deviceWatts, "deviceWatts");
        Checks.within(devices, 1, 1000, "devices");
        Checks.notNegative(deviceKelvinPerWatt, "deviceKelvinPerWatt");
        double room = junctionCelsius - airCelsius;
        double left = room - deviceWatts * deviceKelvinPerWatt;
        if (room <= 0) {
            return new HeatAnswer.Impossible(
                    TEXTS.text("sink.air", SupplyFigures.tenth(airCelsius), SupplyFigures.tenth(junctionCelsius)),
                    TEXTS.text("limits.hotAir.remedy"));
        }
        if (left <= 0) {
            return new HeatAnswer.Impossible(
                    TEXTS.text(
                            "sink.drop",
                            SupplyFigures.tenth(deviceWatts * deviceKelvinPerWatt),
                            SupplyFigures.tenth(room)),
                    TEXTS.text("sink.drop.remedy"));
        }
        double need = left / (devices * deviceWatts);
        return new HeatAnswer.Bounded(need, TEXTS.text("sink.need", SupplyFigures.format("%.3g", need)));
    }
}
