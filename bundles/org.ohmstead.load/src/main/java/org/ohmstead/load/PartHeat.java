// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.OptionalDouble;

/**
 * One resistor of a hot network.
 *
 * @param resistor which
 * @param powerWatts what it turns into heat
 * @param share that over the network's power
 * @param hotOhms its resistance when hot; as far as its thermal resistances and its temperature coefficient are known
 * @param caseCelsius temperature of its case; only for one on a sink of known thermal resistance
 * @param elementCelsius temperature of its wire; only when the thermal resistance from there is known
 * @param lineCelsius temperature of its hottest spot as its derating line implies: the line falls to zero where the air, or the case,
 *     alone brings the spot to the end of the line; empty without a rating
 * @param allowedWatts what it may take for as long as one likes; empty without a rating
 * @param headroomRatio {@code allowedWatts} over {@code powerWatts}: 1 at its limit, below 1 beyond it; empty without a rating
 */
public record PartHeat(
        Resistor resistor,
        double powerWatts,
        double share,
        double hotOhms,
        OptionalDouble caseCelsius,
        OptionalDouble elementCelsius,
        OptionalDouble lineCelsius,
        OptionalDouble allowedWatts,
        OptionalDouble headroomRatio) {
    public PartHeat {
        Checks.present(resistor, "resistor");
        Checks.positive(powerWatts, "powerWatts");
        Checks.within(share, 0, 1, "share");
        Checks.positive(hotOhms, "hotOhms");
    }

    /**
     * Returns the temperature in degrees Celsius that a hand may meet, as far as it is known: that of the case, else that of the wire, else
     * what the derating line implies; the last two are upper bounds of the surface.
     */
    public OptionalDouble surfaceCelsius() {
        if (caseCelsius.isPresent()) {
            return caseCelsius;
        }
        return elementCelsius.isPresent() ? elementCelsius : lineCelsius;
    }

    static PartHeat of(Resistor resistor, double powerWatts, double share, double hotOhms, double ambientCelsius) {
        OptionalDouble sink = resistor.traits().sinkKelvinPerWatt();
        OptionalDouble wire = resistor.traits().elementKelvinPerWatt();
        double base = ambientCelsius + powerWatts * sink.orElse(0);
        OptionalDouble line = resistor.rating().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(base
                        + powerWatts * impliedKelvinPerWatt(resistor.rating().get()));
        OptionalDouble allowed = Derating.allowedWatts(resistor, ambientCelsius);
        return new PartHeat(
                resistor,
                powerWatts,
                share,
                hotOhms,
                sink.isPresent() ? OptionalDouble.of(base) : OptionalDouble.empty(),
                wire.isPresent() ? OptionalDouble.of(base + powerWatts * wire.getAsDouble()) : OptionalDouble.empty(),
                line,
                allowed,
                allowed.isPresent() ? OptionalDouble.of(allowed.getAsDouble() / powerWatts) : allowed);
    }

    private static double impliedKelvinPerWatt(PowerRating rating) {
        return (rating.zeroPowerCelsius() - rating.ratedToCelsius()) / rating.ratedWatts();
    }
}
