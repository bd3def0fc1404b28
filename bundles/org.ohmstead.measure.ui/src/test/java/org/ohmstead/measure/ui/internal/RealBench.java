// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.SimulatedBenchDriver;

/** A simulated bench that says that it is real, so that the amplifier rests on it. */
final class RealBench implements BenchDriver {
    static final String ID = "org.example.real";

    private final SimulatedBenchDriver inner = new SimulatedBenchDriver();

    @Override
    public DriverInfo info() {
        return new DriverInfo(
                ID,
                "1.0.0",
                "Bench of the test",
                "A bench that says that it is real.",
                DriverInfo.Kind.REAL,
                inner.info().settings());
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException, InterruptedException {
        return inner.open(subject, settings);
    }
}
