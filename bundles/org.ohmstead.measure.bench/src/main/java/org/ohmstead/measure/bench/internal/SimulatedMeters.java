// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.OptionalDouble;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;

/** The meters of a simulated bench: each off within its specification, one of them slow or lying on demand. */
final class SimulatedMeters {
    private static final double LIE_RATIO = 0.8;

    private final Fault fault;
    private final MeterErrors outputErrors;
    private final MeterErrors voltsErrors;
    private final MeterErrors ampsErrors;
    private final MeterErrors celsiusErrors;
    private final SlowMeter slowVolts = new SlowMeter();
    private final SlowMeter slowAmps = new SlowMeter();
    private final SlowMeter slowCelsius = new SlowMeter();

    SimulatedMeters(Subject subject, Settings settings, Fault fault) {
        this.fault = fault;
        boolean exact = settings.flag("ideal") || !settings.flag("meterErrors");
        long seed = settings.count("seed");
        this.outputErrors = errors(subject, MeterQuantity.OUTPUT_VOLTS, exact, seed);
        this.voltsErrors = errors(subject, MeterQuantity.SUPPLY_VOLTS, exact, seed);
        this.ampsErrors = errors(subject, MeterQuantity.SUPPLY_AMPS, exact, seed);
        this.celsiusErrors = errors(subject, MeterQuantity.TEMPERATURE_CELSIUS, exact, seed);
    }

    private static MeterErrors errors(Subject subject, MeterQuantity quantity, boolean exact, long seed) {
        if (exact) {
            return MeterErrors.none();
        }
        Accuracy accuracy = subject.project()
                .bench()
                .meterFor(quantity)
                .map(Meter::accuracy)
                .orElse(new Accuracy(0.002, 0, 0, 0));
        return MeterErrors.within(accuracy, seed * 31 + quantity.ordinal());
    }

    /** What the recorder shows over what is there. */
    double outputRatio() {
        return outputErrors.gainRatio();
    }

    double supplyVolts(double volts, double atSeconds, boolean faulty) {
        return voltsErrors.shown(followed(slowVolts, volts, atSeconds, faulty));
    }

    double supplyAmps(double amps, double atSeconds, boolean faulty) {
        boolean lying = fault == Fault.LYING_METER && faulty;
        return ampsErrors.shown(followed(slowAmps, amps, atSeconds, faulty)) * (lying ? LIE_RATIO : 1);
    }

    double caseCelsius(double celsius, double atSeconds, boolean faulty) {
        return celsiusErrors.shown(followed(slowCelsius, celsius, atSeconds, faulty));
    }

    double airCelsius(double celsius) {
        return celsiusErrors.shown(celsius);
    }

    private double followed(SlowMeter meter, double value, double atSeconds, boolean faulty) {
        double slow = meter.follow(value, atSeconds);
        return fault == Fault.SLOW_METER && faulty ? slow : value;
    }

    /** A display that follows with a time constant. */
    private static final class SlowMeter {
        private static final double TAU_SECONDS = 8;

        private OptionalDouble shown = OptionalDouble.empty();
        private double shownSeconds;

        double follow(double value, double atSeconds) {
            double before = shown.orElse(value);
            double now = value + (before - value) * Math.exp((shownSeconds - atSeconds) / TAU_SECONDS);
            shown = OptionalDouble.of(now);
            shownSeconds = atSeconds;
            return now;
        }
    }
}
