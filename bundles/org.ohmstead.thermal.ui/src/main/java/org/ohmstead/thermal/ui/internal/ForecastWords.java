// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.thermal.plan.ExpectedPower;
import org.ohmstead.thermal.plan.Obstacle;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** Phrases of the forecast. */
final class ForecastWords {
    private static final Messages TEXTS = Messages.of(ForecastWords.class);

    static final String NONE = "\u2013";

    private static final double JOULES_PER_WATT_HOUR = 3600;
    private static final double PERCENT = 100;
    private static final double SAME_SECONDS = 1;

    private ForecastWords() {}

    /** Returns the whole schedule as a line. */
    static String summary(Schedule schedule) {
        return TEXTS.text(
                "words.summary",
                HeatWords.time(schedule.totalSeconds()),
                HeatWords.time(schedule.onSeconds()),
                HeatWords.time(schedule.changeSeconds()),
                HeatWords.time(schedule.restSeconds()),
                HeatWords.number(schedule.energyJoules() / JOULES_PER_WATT_HOUR),
                bound(schedule));
    }

    /** Returns how far the schedule is from the shortest that there could be. */
    static String bound(Schedule schedule) {
        if (schedule.totalSeconds() - schedule.lowerBoundSeconds() < SAME_SECONDS) {
            return TEXTS.text("words.noLess");
        }
        return TEXTS.text("words.bound", HeatWords.time(schedule.lowerBoundSeconds()), percent(schedule.gapRatio()));
    }

    static String percent(double ratio) {
        return Numbers.format(ratio < 0.1 ? "%.1f" : "%.0f", PERCENT * ratio) + " %";
    }

    /** Returns what a search found, against the plan's order. */
    static String found(Schedule found, OptionalDouble planSeconds) {
        List<String> sentences = new ArrayList<>();
        String takes = HeatWords.time(found.totalSeconds());
        sentences.add(
                planSeconds.isPresent()
                        ? TEXTS.text("words.foundInstead", takes, HeatWords.time(planSeconds.getAsDouble()))
                        : TEXTS.text("words.found", takes));
        if (found.provenShortest()) {
            sentences.add(TEXTS.text("words.proven"));
        }
        switch (found.ending()) {
            case CANCELLED -> sentences.add(TEXTS.text("words.cancelled"));
            case TIME_LIMIT -> sentences.add(TEXTS.text("words.timeOver"));
            case COMPLETE, FIXED_ORDER -> {
                // It ended of itself.
            }
        }
        return String.join(" ", sentences);
    }

    /** Returns how much longer or shorter a schedule is than another one. */
    static String difference(double seconds) {
        if (Math.abs(seconds) < SAME_SECONDS) {
            return TEXTS.text("words.same");
        }
        return TEXTS.text(seconds > 0 ? "words.longer" : "words.shorter", HeatWords.time(Math.abs(seconds)));
    }

    static String basis(ExpectedPower.Basis basis) {
        return TEXTS.text("basis." + basis.name());
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
            return Optional.of(TEXTS.text("words.noSteps"));
        }
        if (forecast.plan().task().isEmpty()) {
            return Optional.of(
                    forecast.project().loads().isEmpty()
                            ? TEXTS.text("words.noLoads")
                            : TEXTS.text("words.noLoadExists"));
        }
        return Optional.empty();
    }
}
