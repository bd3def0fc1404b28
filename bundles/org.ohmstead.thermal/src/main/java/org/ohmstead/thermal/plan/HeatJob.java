// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.Map;

/**
 * A stretch of constant mean powers that has to be run without a break: one step of a plan, or the warm-up.
 *
 * @param id what it is called, unique in its task
 * @param onSeconds how long it is on, above 0
 * @param watts mean heat of each source of the model in watts, in the order of the model's sources, each at least 0
 * @param rippleKelvin by the id of a point, how far it swings above its mean while bursts come and go, in kelvins, at
 *     least 0; added to the slow temperature for the whole of the job
 * @param supplyWatts mean power taken from the supply in watts, at least 0; counts for the energy only
 * @param leastRestSeconds a rest before it that somebody asked for, at least 0; it comes on top of the change-over
 * @param stress of orders of the same length that with rising stress is preferred; any finite number
 */
public record HeatJob(
        String id,
        double onSeconds,
        List<Double> watts,
        Map<String, Double> rippleKelvin,
        double supplyWatts,
        double leastRestSeconds,
        double stress) {
    public HeatJob {
        Require.named(id, "job id");
        Require.positive(onSeconds, "onSeconds");
        watts = List.copyOf(watts);
        watts.forEach(value -> Require.notNegative(value, "watts"));
        rippleKelvin = Map.copyOf(rippleKelvin);
        rippleKelvin.values().forEach(value -> Require.notNegative(value, "rippleKelvin"));
        Require.notNegative(supplyWatts, "supplyWatts");
        Require.notNegative(leastRestSeconds, "leastRestSeconds");
        Require.finite(stress, "stress");
    }

    /** Makes a job without bursts and without wishes, whose heat is all that it takes from the supply. */
    public static HeatJob of(String id, double onSeconds, List<Double> watts) {
        double sum = watts.stream().mapToDouble(Double::doubleValue).sum();
        return new HeatJob(id, onSeconds, watts, Map.of(), sum, 0, 0);
    }

    /** Returns this job with another rest before it, in seconds. */
    public HeatJob withLeastRestSeconds(double newLeastRestSeconds) {
        return new HeatJob(id, onSeconds, watts, rippleKelvin, supplyWatts, newLeastRestSeconds, stress);
    }
}
