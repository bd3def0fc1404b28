// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.sample;

import java.util.List;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.Unit;
import org.osgi.service.component.annotations.Component;

/**
 * A bench with two resistors in the place of the amplifier: a source feeds the series resistor, and the output is what is across the shunt
 * resistor and the load. For checking a procedure against sums that can be done by hand.
 */
@Component
public final class DividerDriver implements BenchDriver {
    private static final DriverInfo INFO = new DriverInfo(
            "org.ohmstead.sample.divider",
            "1.0.0",
            "Divider of two resistors",
            "Reckons what a source with a divider in the place of the amplifier would put across the load. Nothing is"
                    + " measured.",
            DriverInfo.Kind.SIMULATED,
            List.of(
                    ohms("seriesOhms", "series resistor", "From the source to the output.", 10),
                    ohms("shuntOhms", "shunt resistor", "From the output to ground.", 10),
                    new Setting.Number(
                            "sourceVolts",
                            "source",
                            "RMS volts of the source's full output.",
                            Unit.VOLT,
                            10,
                            0.001,
                            100)));

    private static Setting ohms(String id, String name, String help, double usual) {
        return new Setting.Number(id, name, help, Unit.OHM, usual, 0.001, 1e6);
    }

    @Override
    public DriverInfo info() {
        return INFO;
    }

    @Override
    public Bench open(Subject subject, Settings settings) {
        return new DividerBench(
                subject, settings.number("seriesOhms"), settings.number("shuntOhms"), settings.number("sourceVolts"));
    }
}
