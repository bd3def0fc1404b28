// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.time.Clock;
import java.util.List;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.internal.TypedBench;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;

/**
 * A person works the bench: is told what to set and connect, and types in what the instruments show. What is far from the forecast
 * is asked back.
 */
@Component
public final class TypedBenchDriver implements BenchDriver {
    private static final Messages TEXTS = Messages.of(TypedBenchDriver.class);

    /** The output comes as files of a recorder. */
    public static final String CAPTURE_FILES = "capture files";
    /** The output comes as the readings of a voltmeter and a distortion meter. */
    public static final String VOLTS_AND_DISTORTION = "volts and distortion";
    /** The output is not recorded. */
    public static final String NOTHING = "nothing";

    private final OperatorPort operator;
    private final Clock clock;

    /** Makes a driver for a person. */
    @Activate
    public TypedBenchDriver(@Reference OperatorPort operator) {
        this(operator, Clock.systemUTC());
    }

    /** Makes a driver for a person, with a clock that tells when they answered. */
    public TypedBenchDriver(OperatorPort operator, Clock clock) {
        this.operator = operator;
        this.clock = clock;
    }

    @Override
    public DriverInfo info() {
        return new DriverInfo(
                        "org.ohmstead.bench.typed",
                        "1.0.0",
                        TEXTS.text("typed.name"),
                        TEXTS.text("typed.summary"),
                        DriverInfo.Kind.REAL,
                        List.of(
                                new Setting.Choice(
                                        "output",
                                        TEXTS.text("typed.output"),
                                        TEXTS.text("typed.output.help"),
                                        List.of(CAPTURE_FILES, VOLTS_AND_DISTORTION, NOTHING),
                                        List.of(
                                                TEXTS.text("typed.output.captureFiles"),
                                                TEXTS.text("typed.output.voltsAndDistortion"),
                                                TEXTS.text("typed.output.nothing")),
                                        CAPTURE_FILES),
                                new Setting.Flag(
                                        "supplyAmps",
                                        TEXTS.text("typed.supplyAmps"),
                                        TEXTS.text("typed.supplyAmps.help"),
                                        true),
                                new Setting.Flag(
                                        "caseCelsius",
                                        TEXTS.text("typed.caseCelsius"),
                                        TEXTS.text("typed.caseCelsius.help"),
                                        true),
                                new Setting.Flag(
                                        "soundLevel",
                                        TEXTS.text("typed.soundLevel"),
                                        TEXTS.text("typed.soundLevel.help"),
                                        true)))
                .askingPerson();
    }

    @Override
    public Bench open(Subject subject, Settings settings) {
        return new TypedBench(subject, settings, operator, clock);
    }
}
