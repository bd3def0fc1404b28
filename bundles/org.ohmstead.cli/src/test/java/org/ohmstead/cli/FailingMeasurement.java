// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.Unit;

/** A measurement that cannot finish at one step, and reads the supply at the others. */
final class FailingMeasurement implements Measurement {
    private static final FigureInfo VOLTS = new FigureInfo("supply", "supply volts", Unit.VOLT, false);

    private final String failsAt;

    FailingMeasurement(String failsAt) {
        this.failsAt = failsAt;
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.example.failing",
                "1.0.0",
                "Failing",
                "Fails at one step.",
                List.of(),
                Set.of(Ability.SUPPLY_VOLTS),
                List.of(),
                List.of(VOLTS),
                Duration.ofSeconds(30));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        bench.feed(new Feed.Silence());
        progress.checkpoint();
        if (subject.step().id().equals(failsAt)) {
            throw new MeasurementException("At this step the lead fell off. Put it on again.");
        }
        return MeasurementResult.of(
                Figure.of(VOLTS, bench.observe().supplyVolts().orElseThrow()));
    }
}
