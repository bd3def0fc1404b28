// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.Unit;

/** A measurement that always fails by a fault of its own. */
final class Broken implements Measurement {
    static final String ID = "org.example.broken";

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                ID,
                "1.0.0",
                "Broken measurement",
                "It fails.",
                List.of(),
                Set.of(),
                List.of(),
                List.of(new FigureInfo("none", "nothing", Unit.NONE, false)),
                Duration.ofSeconds(10));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress) {
        throw new IllegalStateException("broken by design");
    }
}
