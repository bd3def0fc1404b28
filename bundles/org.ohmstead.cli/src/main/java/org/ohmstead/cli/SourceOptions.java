// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.OptionalDouble;
import org.ohmstead.thermal.SupplySource;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** What stands behind the supply volts, as options. */
final class SourceOptions {
    private static final double MOST_OHMS = 1;
    private static final double MOST_AMPS = 10_000;
    private static final double LEAST_AMPS = 0.01;
    private static final double MILLI = 1000;

    @Option(
            names = "--source-milliohms",
            paramLabel = "R",
            defaultValue = "0",
            descriptionKey = "source.source-milliohms")
    private String sourceMilliohms;

    @Option(names = "--limit-amps", paramLabel = "I", descriptionKey = "source.limit-amps")
    private String limitAmps;

    @Option(names = "--battery", descriptionKey = "source.battery")
    private boolean battery;

    /** Returns whether it is a battery. */
    boolean battery() {
        return battery;
    }

    /** Returns the supply at some volts without a load. */
    SupplySource source(double openVolts) throws InputException {
        if (battery && limitAmps != null) {
            throw new InputException(Texts.of("source.battery"));
        }
        OptionalDouble limit = Quantities.optionalWithin(limitAmps, Unit.AMPERE, LEAST_AMPS, MOST_AMPS, "--limit-amps");
        double ohms = Quantities.within(sourceMilliohms, Unit.NONE, 0, MILLI * MOST_OHMS, "--source-milliohms") / MILLI;
        return new SupplySource(openVolts, ohms, limit, battery);
    }
}
