// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.OptionalDouble;

/**
 * How much of its rated power a resistor may take for as long as one likes when it is warm around it: the straight derating line of
 * data sheets, which runs from the rated power to zero between the two temperatures of a {@link PowerRating} (the form of
 * MIL-PRF-39009).
 */
public final class Derating {
    private Derating() {}

    /**
     * Returns the power in watts that a rating allows at a temperature: the rated power up to {@code ratedToCelsius}, zero from
     * {@code zeroPowerCelsius} on, a straight line between.
     *
     * @param rating the rating
     * @param celsius the temperature that the rating speaks of, that of the air or that of the case
     */
    public static double watts(PowerRating rating, double celsius) {
        Checks.present(rating, "rating");
        Checks.finite(celsius, "celsius");
        double line = slopeWattsPerKelvin(rating) * (rating.zeroPowerCelsius() - celsius);
        return Math.min(rating.ratedWatts(), Math.max(0, line));
    }

    /**
     * Returns the power in watts that a rating by the case's temperature allows on a sink, where the case is as warm as that power makes
     * it: P = k (T0 - Ta) / (1 + k Rsa) with the slope k of the line, at most the rated power.
     *
     * @param rating the rating; its temperatures are those of the case
     * @param ambientCelsius temperature of the air at the sink
     * @param sinkKelvinPerWatt thermal resistance from the case to the air, above 0
     */
    public static double wattsOnSink(PowerRating rating, double ambientCelsius, double sinkKelvinPerWatt) {
        Checks.present(rating, "rating");
        Checks.finite(ambientCelsius, "ambientCelsius");
        Checks.positive(sinkKelvinPerWatt, "sinkKelvinPerWatt");
        double slope = slopeWattsPerKelvin(rating);
        double line = slope * (rating.zeroPowerCelsius() - ambientCelsius) / (1 + slope * sinkKelvinPerWatt);
        return Math.min(rating.ratedWatts(), Math.max(0, line));
    }

    /**
     * Returns the power in watts that a resistor may take for as long as one likes in air of a temperature, on its sink when it has one;
     * empty when it has no rating.
     *
     * @param resistor the resistor
     * @param ambientCelsius temperature of the air
     */
    public static OptionalDouble allowedWatts(Resistor resistor, double ambientCelsius) {
        Checks.finite(ambientCelsius, "ambientCelsius");
        double watts = wattsOrNaN(resistor, ambientCelsius);
        return Double.isNaN(watts) ? OptionalDouble.empty() : OptionalDouble.of(watts);
    }

    /** As {@link #allowedWatts}, without the wrapping that a search through many networks cannot afford. */
    static double wattsOrNaN(Resistor resistor, double ambientCelsius) {
        if (resistor.rating().isEmpty()) {
            return Double.NaN;
        }
        PowerRating rating = resistor.rating().get();
        OptionalDouble sink = resistor.traits().sinkKelvinPerWatt();
        return sink.isPresent()
                ? wattsOnSink(rating, ambientCelsius, sink.getAsDouble())
                : watts(rating, ambientCelsius);
    }

    private static double slopeWattsPerKelvin(PowerRating rating) {
        return rating.ratedWatts() / (rating.zeroPowerCelsius() - rating.ratedToCelsius());
    }
}
