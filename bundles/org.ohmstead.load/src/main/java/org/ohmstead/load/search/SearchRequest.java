// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.time.Duration;
import java.util.OptionalDouble;
import org.ohmstead.load.Stock;

/**
 * What is looked for: a load of a wanted resistance from the resistors at hand. Start from {@link #of} and change what matters.
 *
 * @param stock resistors at hand
 * @param targetOhms resistance wanted in ohms, above 0
 * @param maxParts most resistors in one network, 1 to 30
 * @param errorLimitRatio greatest |error| of a candidate, 0 to 1; empty for no limit
 * @param powerWatts power that a candidate must take for as long as one likes, above 0; empty for any
 * @param ambientCelsius temperature of the air that the ratings are reduced to
 * @param bandHz highest frequency at which the power must be within 1 % of V<sup>2</sup>/R, above 0; empty for no such wish. A
 *     resistor of which no inductance is known counts as having none.
 * @param valuesWanted how many different resistances the ranking holds, 1 to 1000
 * @param networksPerValue how many networks of the same resistance the ranking shows, 1 to 50
 * @param timeLimit time after which the search ends with what it has, above 0
 */
public record SearchRequest(
        Stock stock,
        double targetOhms,
        int maxParts,
        OptionalDouble errorLimitRatio,
        OptionalDouble powerWatts,
        double ambientCelsius,
        OptionalDouble bandHz,
        int valuesWanted,
        int networksPerValue,
        Duration timeLimit) {
    private static final int MOST_PARTS = 30;
    private static final int MOST_VALUES = 1000;
    private static final int MOST_NETWORKS = 50;
    private static final double USUAL_AMBIENT_CELSIUS = 25;
    private static final int USUAL_VALUES = 20;
    private static final int USUAL_NETWORKS = 3;
    private static final Duration USUAL_TIME_LIMIT = Duration.ofSeconds(10);

    public SearchRequest {
        Checks.present(stock, "stock");
        Checks.positive(targetOhms, "targetOhms");
        Checks.within(maxParts, 1, MOST_PARTS, "maxParts");
        Checks.present(errorLimitRatio, "errorLimitRatio");
        errorLimitRatio.ifPresent(ratio -> Checks.ratio(ratio, "errorLimitRatio"));
        Checks.positive(powerWatts, "powerWatts");
        Checks.finite(ambientCelsius, "ambientCelsius");
        Checks.positive(bandHz, "bandHz");
        Checks.within(valuesWanted, 1, MOST_VALUES, "valuesWanted");
        Checks.within(networksPerValue, 1, MOST_NETWORKS, "networksPerValue");
        Checks.present(timeLimit, "timeLimit");
        if (timeLimit.isNegative() || timeLimit.isZero()) {
            throw new IllegalArgumentException("timeLimit is " + timeLimit + "; it must be above 0");
        }
    }

    /** Asks for the 20 nearest resistances, of any error and power, at 25 °C, within 10 s. */
    public static SearchRequest of(Stock stock, double targetOhms, int maxParts) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                USUAL_AMBIENT_CELSIUS,
                OptionalDouble.empty(),
                USUAL_VALUES,
                USUAL_NETWORKS,
                USUAL_TIME_LIMIT);
    }

    /** Returns this request with another greatest |error|, 0 to 1, or none. */
    public SearchRequest withErrorLimitRatio(OptionalDouble newErrorLimitRatio) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                newErrorLimitRatio,
                powerWatts,
                ambientCelsius,
                bandHz,
                valuesWanted,
                networksPerValue,
                timeLimit);
    }

    /** Returns this request with another power in watts, or none. */
    public SearchRequest withPowerWatts(OptionalDouble newPowerWatts) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                errorLimitRatio,
                newPowerWatts,
                ambientCelsius,
                bandHz,
                valuesWanted,
                networksPerValue,
                timeLimit);
    }

    /** Returns this request with another temperature of the air in degrees Celsius. */
    public SearchRequest withAmbientCelsius(double newAmbientCelsius) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                errorLimitRatio,
                powerWatts,
                newAmbientCelsius,
                bandHz,
                valuesWanted,
                networksPerValue,
                timeLimit);
    }

    /** Returns this request with another highest frequency in hertz, or none. */
    public SearchRequest withBandHz(OptionalDouble newBandHz) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                errorLimitRatio,
                powerWatts,
                ambientCelsius,
                newBandHz,
                valuesWanted,
                networksPerValue,
                timeLimit);
    }

    /** Returns this request with another length of the ranking: how many resistances, and how many networks of each. */
    public SearchRequest withRanking(int newValuesWanted, int newNetworksPerValue) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                errorLimitRatio,
                powerWatts,
                ambientCelsius,
                bandHz,
                newValuesWanted,
                newNetworksPerValue,
                timeLimit);
    }

    /** Returns this request with another time limit. */
    public SearchRequest withTimeLimit(Duration newTimeLimit) {
        return new SearchRequest(
                stock,
                targetOhms,
                maxParts,
                errorLimitRatio,
                powerWatts,
                ambientCelsius,
                bandHz,
                valuesWanted,
                networksPerValue,
                newTimeLimit);
    }
}
