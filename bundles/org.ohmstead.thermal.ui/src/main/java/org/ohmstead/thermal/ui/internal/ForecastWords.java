// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.thermal.plan.ExpectedPower;
import org.ohmstead.thermal.plan.Obstacle;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.workbench.look.Numbers;

/** Phrases of the forecast. */
final class ForecastWords {
    static final String NONE = "\u2013";

    private static final double JOULES_PER_WATT_HOUR = 3600;
    private static final double PERCENT = 100;
    private static final double SAME_SECONDS = 1;

    private ForecastWords() {}

    /** Returns the whole schedule as a line. */
    static String summary(Schedule schedule) {
        return "In all " + HeatWords.time(schedule.totalSeconds()) + ": signal on "
                + HeatWords.time(schedule.onSeconds()) + ", changes " + HeatWords.time(schedule.changeSeconds())
                + ", rests " + HeatWords.time(schedule.restSeconds()) + ". From the supply "
                + HeatWords.number(schedule.energyJoules() / JOULES_PER_WATT_HOUR) + " Wh. " + bound(schedule);
    }

    /** Returns how far the schedule is from the shortest that there could be. */
    static String bound(Schedule schedule) {
        if (schedule.totalSeconds() - schedule.lowerBoundSeconds() < SAME_SECONDS) {
            return "No order can take less.";
        }
        return "No order can take less than " + HeatWords.time(schedule.lowerBoundSeconds()) + "; this is "
                + percent(schedule.gapRatio()) + " above it.";
    }

    static String percent(double ratio) {
        return Numbers.format(ratio < 0.1 ? "%.1f" : "%.0f", PERCENT * ratio) + " %";
    }

    /** Returns what a search found, against the plan's order. */
    static String found(Schedule found, OptionalDouble planSeconds) {
        String takes = "This order takes " + HeatWords.time(found.totalSeconds());
        if (planSeconds.isPresent()) {
            takes += " instead of " + HeatWords.time(planSeconds.getAsDouble());
        }
        String how =
                switch (found.ending()) {
                    case CANCELLED -> " The search was cancelled; it is the best so far.";
                    case TIME_LIMIT -> " The time for the search was over; it is the best so far.";
                    case COMPLETE, FIXED_ORDER -> "";
                };
        return takes + "." + (found.provenShortest() ? " It is proven that none takes less." : "") + how;
    }

    /** Returns how much longer or shorter a schedule is than another one. */
    static String difference(double seconds) {
        if (Math.abs(seconds) < SAME_SECONDS) {
            return "as long as before";
        }
        return HeatWords.time(Math.abs(seconds)) + (seconds > 0 ? " longer" : " shorter") + " than before";
    }

    static String basis(ExpectedPower.Basis basis) {
        return switch (basis) {
            case READING -> "reading";
            case RATING -> "rating";
            case SCALED -> "rating, scaled";
            case OTHER_LOAD -> "other load";
            case UNKNOWN -> "not known";
        };
    }

    static String minutes(double seconds) {
        return Numbers.format("%.1f", seconds / 60);
    }

    static String seconds(double seconds) {
        return Numbers.format("%.0f", seconds);
    }

    static String celsius(double celsius) {
        return Numbers.format("%.1f", celsius);
    }

    /** Returns a number of three digits, or a dash. */
    static String number(OptionalDouble value) {
        return value.isPresent() ? HeatWords.number(value.getAsDouble()) : NONE;
    }

    /** Returns an obstacle with its remedy. */
    static String obstacle(Obstacle obstacle) {
        return Numbers.inSentence(obstacle.what() + " " + obstacle.remedy());
    }

    /** Returns why there is nothing to forecast, with what to do; empty when there is something. */
    static Optional<String> whyNothing(Forecast forecast) {
        if (forecast.project().plan().isEmpty()) {
            return Optional.of("The plan has no steps yet. Add some on the plan's page; what they heat and draw is"
                    + " forecast here then.");
        }
        if (forecast.plan().task().isEmpty()) {
            return Optional.of(
                    forecast.project().loads().isEmpty()
                            ? "The project has no loads yet, so its steps have nothing to drive. Add loads on their"
                                    + " page, or design them in the view Load design."
                            : "No step of the plan has a load that exists. Choose loads for the steps on the plan's"
                                    + " page.");
        }
        return Optional.empty();
    }
}
