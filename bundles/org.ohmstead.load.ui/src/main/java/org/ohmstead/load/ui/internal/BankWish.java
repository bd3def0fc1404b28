// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.load.LoadPrecautions;
import org.ohmstead.load.Stock;
import org.ohmstead.load.search.BankPlanRequest;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;

/**
 * What a bank is planned for.
 *
 * @param toleranceRatio greatest error of each branch
 * @param power what each branch must take
 * @param mostParts most resistors in a branch
 * @param timeLimitSeconds time after which the best so far is shown
 */
record BankWish(double toleranceRatio, Power power, int mostParts, double timeLimitSeconds) {
    private static final Messages TEXTS = Messages.of(BankWish.class);

    static final int MOST_PARTS = 12;
    private static final double USUAL_RATIO = 0.02;
    private static final int USUAL_PARTS = 6;
    private static final double USUAL_SECONDS = 20;
    private static final double USUAL_CELSIUS = 25;
    private static final double MILLIS = 1000;

    /** What the form holds at first. */
    static final BankWish USUAL = new BankWish(USUAL_RATIO, Power.RATED, USUAL_PARTS, USUAL_SECONDS);

    /** How much power a branch must take for as long as one likes. */
    enum Power {
        /** What the amplifier's ratings let expect in the plan's steps. */
        RATED,
        /** The limit that the load has now. */
        LIMIT,
        /** No wish. */
        ANY;

        String words() {
            return TEXTS.text("bank.power." + name());
        }
    }

    BankWish withToleranceRatio(double newToleranceRatio) {
        return new BankWish(newToleranceRatio, power, mostParts, timeLimitSeconds);
    }

    BankWish withPower(Power newPower) {
        return new BankWish(toleranceRatio, newPower, mostParts, timeLimitSeconds);
    }

    BankWish withMostParts(int newMostParts) {
        return new BankWish(toleranceRatio, power, newMostParts, timeLimitSeconds);
    }

    BankWish withTimeLimitSeconds(double newTimeLimitSeconds) {
        return new BankWish(toleranceRatio, power, mostParts, newTimeLimitSeconds);
    }

    /** Returns the loads of a project, as a plan of a bank is asked for; at least one. */
    BankPlanRequest request(Project project) {
        List<BankPlanRequest.Load> loads = project.loads().stream()
                .map(load -> new BankPlanRequest.Load(
                        load.nominalOhms(), load.branches().size(), toleranceRatio, watts(project, load)))
                .toList();
        return new BankPlanRequest(
                Stock.of(project.bench().parts()),
                loads,
                mostParts,
                project.bench().ambientCelsius().orElse(USUAL_CELSIUS),
                Duration.ofMillis(Math.round(timeLimitSeconds * MILLIS)));
    }

    private OptionalDouble watts(Project project, BenchLoad load) {
        return switch (power) {
            case RATED ->
                project.plan().stream()
                        .filter(step -> step.loadId().equals(load.id()))
                        .map(step -> LoadPrecautions.expectedWatts(project, step, load))
                        .filter(OptionalDouble::isPresent)
                        .mapToDouble(OptionalDouble::getAsDouble)
                        .max();
            case LIMIT -> OptionalDouble.of(load.powerLimitWatts());
            case ANY -> OptionalDouble.empty();
        };
    }
}
