// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.time.Duration;
import java.util.OptionalDouble;
import org.ohmstead.load.Stock;
import org.ohmstead.load.search.SearchRequest;
import org.ohmstead.model.Project;

/**
 * What is looked for.
 *
 * @param ohms resistance of a branch
 * @param errorLimitRatio greatest error; empty for any
 * @param powerWatts power into a branch; empty for any
 * @param arrangement how many branches
 * @param highestHz highest frequency at which the load must still be a resistance; empty for any
 * @param ambientCelsius temperature of the air
 * @param mostParts most resistors in a branch
 * @param timeLimitSeconds time after which the best so far is shown
 */
record Target(
        double ohms,
        OptionalDouble errorLimitRatio,
        OptionalDouble powerWatts,
        Arrangement arrangement,
        OptionalDouble highestHz,
        double ambientCelsius,
        int mostParts,
        double timeLimitSeconds) {
    static final int MOST_PARTS = 30;
    private static final double USUAL_OHMS = 4;
    private static final double USUAL_ERROR_RATIO = 0.01;
    private static final double USUAL_CELSIUS = 25;
    private static final int USUAL_PARTS = 6;
    private static final double USUAL_SECONDS = 10;
    private static final int RANKED_VALUES = 60;
    private static final int NETWORKS_PER_VALUE = 3;
    private static final double MILLIS = 1000;

    /** What the form holds when no project says more. */
    static final Target USUAL = new Target(
            USUAL_OHMS,
            OptionalDouble.of(USUAL_ERROR_RATIO),
            OptionalDouble.empty(),
            Arrangement.PAIR,
            OptionalDouble.empty(),
            USUAL_CELSIUS,
            USUAL_PARTS,
            USUAL_SECONDS);

    Target {
        if (!(ohms > 0)) {
            throw new IllegalArgumentException("ohms is " + ohms + "; it must be a finite number above 0");
        }
        positive("powerWatts", powerWatts);
        positive("highestHz", highestHz);
    }

    private static void positive(String name, OptionalDouble value) {
        if (value.isPresent() && !(value.getAsDouble() > 0)) {
            throw new IllegalArgumentException(
                    name + " is " + value.getAsDouble() + "; it must be a finite number above 0");
        }
    }

    /** Returns what is asked of the search. */
    SearchRequest request(Stock stock) {
        return SearchRequest.of(arrangement.forEach(stock), ohms, mostParts)
                .withErrorLimitRatio(errorLimitRatio)
                .withPowerWatts(powerWatts)
                .withAmbientCelsius(ambientCelsius)
                .withBandHz(highestHz)
                .withRanking(RANKED_VALUES, NETWORKS_PER_VALUE)
                .withTimeLimit(Duration.ofMillis(Math.round(timeLimitSeconds * MILLIS)));
    }

    Target withOhms(double newOhms) {
        return new Target(
                newOhms,
                errorLimitRatio,
                powerWatts,
                arrangement,
                highestHz,
                ambientCelsius,
                mostParts,
                timeLimitSeconds);
    }

    Target withErrorLimitRatio(OptionalDouble newErrorLimitRatio) {
        return new Target(
                ohms,
                newErrorLimitRatio,
                powerWatts,
                arrangement,
                highestHz,
                ambientCelsius,
                mostParts,
                timeLimitSeconds);
    }

    Target withPowerWatts(OptionalDouble newPowerWatts) {
        return new Target(
                ohms,
                errorLimitRatio,
                newPowerWatts,
                arrangement,
                highestHz,
                ambientCelsius,
                mostParts,
                timeLimitSeconds);
    }

    Target withArrangement(Arrangement newArrangement) {
        return new Target(
                ohms,
                errorLimitRatio,
                powerWatts,
                newArrangement,
                highestHz,
                ambientCelsius,
                mostParts,
                timeLimitSeconds);
    }

    Target withHighestHz(OptionalDouble newHighestHz) {
        return new Target(
                ohms,
                errorLimitRatio,
                powerWatts,
                arrangement,
                newHighestHz,
                ambientCelsius,
                mostParts,
                timeLimitSeconds);
    }

    Target withAmbientCelsius(double newAmbientCelsius) {
        return new Target(
                ohms,
                errorLimitRatio,
                powerWatts,
                arrangement,
                highestHz,
                newAmbientCelsius,
                mostParts,
                timeLimitSeconds);
    }

    Target withMostParts(int newMostParts) {
        return new Target(
                ohms,
                errorLimitRatio,
                powerWatts,
                arrangement,
                highestHz,
                ambientCelsius,
                newMostParts,
                timeLimitSeconds);
    }

    Target withTimeLimitSeconds(double newTimeLimitSeconds) {
        return new Target(
                ohms,
                errorLimitRatio,
                powerWatts,
                arrangement,
                highestHz,
                ambientCelsius,
                mostParts,
                newTimeLimitSeconds);
    }

    /** Returns this target in the air of a project's bench. */
    Target in(Project project) {
        return withAmbientCelsius(project.bench().ambientCelsius().orElse(USUAL_CELSIUS));
    }
}
