// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.time.Clock;
import java.time.Instant;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.internal.PacedClock;
import org.ohmstead.measure.bench.internal.SimulatedBench;
import org.ohmstead.measure.bench.internal.SimulatedClock;
import org.ohmstead.measure.bench.internal.SimulationSettings;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;

/**
 * A bench that is reckoned, for learning, for dry runs and for tests: a supply with its cable and current limit, an amplifier whose
 * rails follow the supply, sag and lose volts with heat, a recorder and meters with errors. What is not set comes from the project.
 * The same calls with the same seed give the same results. Time passes in no time unless real pace is asked for.
 *
 * <p>The highest output follows (g V_supply - V_s) R / (R + R_s). An ideal bench is a perfect symmetric clipper, whose power at a
 * distortion is known in closed form. Load inductance and the rise of a burst through the band limits are not simulated.
 */
@Component
public final class SimulatedBenchDriver implements BenchDriver {
    private static final Messages TEXTS = Messages.of(SimulatedBenchDriver.class);

    private final Clock start;

    /** Makes a driver whose benches begin at the time of the computer's clock. */
    @Activate
    public SimulatedBenchDriver() {
        this(Clock.systemUTC());
    }

    /** Makes a driver whose benches begin at what a clock shows when they are opened. */
    public SimulatedBenchDriver(Clock start) {
        this.start = start;
    }

    @Override
    public DriverInfo info() {
        return new DriverInfo(
                "org.ohmstead.bench.simulated",
                "1.0.0",
                TEXTS.text("simulated.name"),
                TEXTS.text("simulated.summary"),
                DriverInfo.Kind.SIMULATED,
                SimulationSettings.all());
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException {
        Instant now = start.instant();
        return new SimulatedBench(
                subject, settings, settings.flag("realPace") ? new PacedClock(now) : new SimulatedClock(now));
    }
}
