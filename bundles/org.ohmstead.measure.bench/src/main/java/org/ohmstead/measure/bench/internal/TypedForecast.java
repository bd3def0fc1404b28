// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.time.Instant;
import java.util.Map;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;

/** What a real bench probably shows: what the simulated one does that is driven alike. */
final class TypedForecast {
    private static final double LOOK_SECONDS = 0.05;

    private final SimulatedBench bench;
    private boolean connected;

    TypedForecast(Subject subject, Instant now) {
        Settings settings;
        try {
            settings = Settings.of(SimulationSettings.all(), Map.of("meterErrors", "false"));
        } catch (SettingException e) {
            throw new IllegalStateException("The settings of the simulated bench do not fit themselves.", e);
        }
        this.bench = new SimulatedBench(subject, settings, new SimulatedClock(now));
    }

    void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        bench.connect(mode, load);
        connected = true;
    }

    void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        bench.setSupplyVolts(supplyVolts);
    }

    void feed(Feed feed) throws MeasurementException, InterruptedException {
        bench.feed(feed);
    }

    Observation observe() throws MeasurementException, InterruptedException {
        return bench.observe();
    }

    /** Volts RMS of a channel's output. */
    double outputVoltsRms(int channel) throws MeasurementException, InterruptedException {
        if (!connected) {
            throw Faults.of("noLoad");
        }
        Acquisition acquisition = bench.acquire(LOOK_SECONDS);
        double square = 0;
        double[] samples = acquisition.output().channels().get(channel).toArray();
        for (double sample : samples) {
            square += sample * sample / samples.length;
        }
        return Math.sqrt(square);
    }

    void close() {
        bench.close();
    }
}
