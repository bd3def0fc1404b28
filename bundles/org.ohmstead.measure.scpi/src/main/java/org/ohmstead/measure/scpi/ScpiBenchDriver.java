// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/**
 * A bench of instruments that speak SCPI over TCP: any of a supply, a generator, an oscilloscope, and meters of supply volts, supply
 * current and temperatures. Those that have an address decide what the bench can do. Loads are connected by hand.
 */
@Component
public final class ScpiBenchDriver implements BenchDriver {
    private static final Messages TEXTS = Messages.of(ScpiBenchDriver.class);

    /** Makes the driver, which keeps nothing. */
    public ScpiBenchDriver() {
        // for the framework
    }

    @Override
    public DriverInfo info() {
        return new DriverInfo(
                "org.ohmstead.measure.scpi.bench",
                "0.1.0",
                TEXTS.text("bench.name"),
                TEXTS.text("bench.summary"),
                DriverInfo.Kind.REAL,
                BenchSettings.list());
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException, InterruptedException {
        return new BenchOpener(Checks.present(subject, "subject"), Checks.present(settings, "settings")).open();
    }
}
