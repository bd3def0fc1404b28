// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * A resistor of the bench's stock.
 *
 * @param id short name, unique among the parts
 * @param ohms measured or nominal resistance in ohms, above 0
 * @param toleranceRatio 0 to 1: 0.05 is 5 %
 * @param ratedWatts rated power in watts, above 0
 * @param ratedToCelsius temperature up to which the rated power holds
 * @param zeroPowerCelsius temperature at which the power allowed has fallen to zero, above {@code ratedToCelsius}
 * @param mounting how it gets rid of its heat
 * @param count how many there are, at least 1
 * @param traits what else is known of it
 */
public record Part(
        String id,
        double ohms,
        double toleranceRatio,
        double ratedWatts,
        double ratedToCelsius,
        double zeroPowerCelsius,
        Mounting mounting,
        int count,
        PartTraits traits) {
    public Part {
        Checks.named(id, "part id");
        Checks.positive(ohms, "ohms");
        Checks.within(toleranceRatio, 0, 1, "toleranceRatio");
        Checks.positive(ratedWatts, "ratedWatts");
        Checks.finite(ratedToCelsius, "ratedToCelsius");
        Checks.finite(zeroPowerCelsius, "zeroPowerCelsius");
        if (zeroPowerCelsius <= ratedToCelsius) {
            throw new IllegalArgumentException("zeroPowerCelsius is " + zeroPowerCelsius
                    + "; it must be above ratedToCelsius, which is " + ratedToCelsius);
        }
        Checks.present(mounting, "mounting");
        Checks.within(count, 1, 10_000, "count");
        Checks.present(traits, "traits");
    }

    /** Makes a resistor of which nothing else is known. */
    public Part(
            String id,
            double ohms,
            double toleranceRatio,
            double ratedWatts,
            double ratedToCelsius,
            double zeroPowerCelsius,
            Mounting mounting,
            int count) {
        this(id, ohms, toleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, mounting, count, PartTraits.NONE);
    }

    /** Returns this part with another id. */
    public Part withId(String newId) {
        return new Part(
                newId, ohms, toleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, mounting, count, traits);
    }

    /** Returns this part with another resistance in ohms. */
    public Part withOhms(double newOhms) {
        return new Part(
                id, newOhms, toleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, mounting, count, traits);
    }

    /** Returns this part with another tolerance ratio. */
    public Part withToleranceRatio(double newToleranceRatio) {
        return new Part(
                id, ohms, newToleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, mounting, count, traits);
    }

    /** Returns this part with another rated power in watts. */
    public Part withRatedWatts(double newRatedWatts) {
        return new Part(
                id, ohms, toleranceRatio, newRatedWatts, ratedToCelsius, zeroPowerCelsius, mounting, count, traits);
    }

    /** Returns this part with another temperature in degrees Celsius up to which the rated power holds. */
    public Part withRatedToCelsius(double newRatedToCelsius) {
        return new Part(
                id, ohms, toleranceRatio, ratedWatts, newRatedToCelsius, zeroPowerCelsius, mounting, count, traits);
    }

    /** Returns this part with another temperature in degrees Celsius at which no power is left. */
    public Part withZeroPowerCelsius(double newZeroPowerCelsius) {
        return new Part(
                id, ohms, toleranceRatio, ratedWatts, ratedToCelsius, newZeroPowerCelsius, mounting, count, traits);
    }

    /** Returns this part with another mounting. */
    public Part withMounting(Mounting newMounting) {
        return new Part(
                id, ohms, toleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, newMounting, count, traits);
    }

    /** Returns this part with another count. */
    public Part withCount(int newCount) {
        return new Part(
                id, ohms, toleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, mounting, newCount, traits);
    }

    /** Returns this part with other traits. */
    public Part withTraits(PartTraits newTraits) {
        return new Part(
                id, ohms, toleranceRatio, ratedWatts, ratedToCelsius, zeroPowerCelsius, mounting, count, newTraits);
    }
}
