// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Locale;

/** What sink some devices need, by Ohm's law of heat: the drops from junction to case to sink to air add up. */
public final class SinkNeed {
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
                    say("The air is at %.1f °C and a junction may reach %.1f °C.", airCelsius, junctionCelsius),
                    "Cool the air, or check the limit.");
        }
        if (left <= 0) {
            return new HeatAnswer.Impossible(
                    say(
                            "Each device alone drops %.1f K between junction and sink, and there are only %.1f K.",
                            deviceWatts * deviceKelvinPerWatt, room),
                    "Share the heat among more devices, or use a better washer or a lower power.");
        }
        double need = left / (devices * deviceWatts);
        return new HeatAnswer.Bounded(
                need, say("The sink may have at most %.3g K/W, from its surface to the air.", need));
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
