// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Range;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.thermal.plan.Obstacle;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.thermal.plan.StepForecast;
import org.ohmstead.units.text.Messages;

/**
 * A step in the table.
 *
 * @param number its place in the order, from 1
 * @param step what it draws and heats
 * @param terminalVolts direct volts at the amplifier's terminals; empty when the step does not say
 * @param job when it is on; empty without a schedule
 * @param restCause what needs the rest before it, in words; empty text when there is none
 * @param peaks how hot each kind of place gets, that with the least room
 * @param obstacle why it is impossible; empty when it is not
 */
record StepTableRow(
        int number,
        StepForecast step,
        OptionalDouble terminalVolts,
        Optional<ScheduledJob> job,
        String restCause,
        Map<ForecastPlace.Kind, Peak> peaks,
        Optional<Obstacle> obstacle) {
    private static final Messages TEXTS = Messages.of(StepTableRow.class);

    StepTableRow {
        peaks = Map.copyOf(peaks);
    }

    /**
     * How hot a place gets during a step.
     *
     * @param place which
     * @param celsius the least and the most that its peak may be
     * @param roomKelvin how far the most stays below the limit; empty without a limit
     * @param marginKelvin how far it is to stay below
     */
    record Peak(ForecastPlace place, Range celsius, OptionalDouble roomKelvin, double marginKelvin) {}

    /** Returns the rows of a forecast, in its order. */
    static List<StepTableRow> of(Forecast forecast) {
        List<StepTableRow> rows = new ArrayList<>();
        for (StepForecast step : forecast.plan().steps()) {
            Optional<ScheduledJob> job = forecast.job(step.jobId());
            rows.add(new StepTableRow(
                    rows.size() + 1,
                    step,
                    forecast.project()
                            .step(step.jobId())
                            .map(Step::supplyVolts)
                            .map(OptionalDouble::of)
                            .orElse(OptionalDouble.empty()),
                    job,
                    job.map(each -> cause(forecast, each)).orElse(""),
                    job.map(each -> peaks(forecast, each)).orElse(Map.of()),
                    obstacle(forecast, step.jobId())));
        }
        return List.copyOf(rows);
    }

    private static String cause(Forecast forecast, ScheduledJob job) {
        return switch (job.cause()) {
            case NONE -> "";
            case WISH -> TEXTS.text("steps.you");
            case LIMIT -> forecast.restCause(job);
        };
    }

    private static Optional<Obstacle> obstacle(Forecast forecast, String jobId) {
        return forecast.impossible().stream()
                .flatMap(impossible -> impossible.obstacles().stream())
                .filter(each -> each.jobId().equals(Optional.of(jobId)))
                .max(Comparator.comparingDouble(Obstacle::excessKelvin));
    }

    private static Map<ForecastPlace.Kind, Peak> peaks(Forecast forecast, ScheduledJob job) {
        Map<ForecastPlace.Kind, Peak> peaks = new EnumMap<>(ForecastPlace.Kind.class);
        double margin = forecast.project().heat().pacing().marginKelvin();
        for (ForecastPlace place : forecast.places()) {
            Peak peak = new Peak(place, forecast.peakCelsius(place, job), forecast.roomKelvin(place, job), margin);
            peaks.merge(place.kind(), peak, (one, other) -> room(one) <= room(other) ? one : other);
        }
        return peaks;
    }

    private static double room(Peak peak) {
        return peak.roomKelvin().orElse(Double.POSITIVE_INFINITY);
    }

    String id() {
        return step.jobId();
    }

    /** Returns the heat in the cable in watts: by the RMS current, the drop by the average; empty without a current. */
    OptionalDouble cableWatts() {
        if (step.current().isEmpty() || step.current().get().averageAmps() <= 0) {
            return OptionalDouble.empty();
        }
        SupplyCurrent current = step.current().get();
        return OptionalDouble.of(step.cableDropVolts() * current.rmsAmps() * current.rmsAmps() / current.averageAmps());
    }
}
