// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.osgi.service.component.annotations.Component;

/**
 * A bench of instruments that speak SCPI over TCP: any of a supply, a generator, an oscilloscope, and meters of supply volts, supply
 * current and temperatures. Those that have an address decide what the bench can do. Loads are connected by hand.
 */
@Component
public final class ScpiBenchDriver implements BenchDriver {
    private static final DriverInfo INFO = new DriverInfo(
            "org.ohmstead.measure.scpi.bench",
            "0.1.0",
            "Instruments with SCPI",
            "Supply, generator, oscilloscope and meters that listen to SCPI commands on a network address. What each"
                    + " is told is in a command set, a text file that can be written for instruments that need their own.",
            DriverInfo.Kind.REAL,
            BenchSettings.list());

    /** Makes the driver, which keeps nothing. */
    public ScpiBenchDriver() {
        // for the framework
    }

    @Override
    public DriverInfo info() {
        return INFO;
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException, InterruptedException {
        return new BenchOpener(Checks.present(subject, "subject"), Checks.present(settings, "settings")).open();
    }
}
