// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** What may be set on a simulated bench. */
public final class SimulationSettings {
    private static final Messages TEXTS = Messages.of(SimulationSettings.class);

    /** Stands for "nobody said so". */
    private static final double UNSAID = -1;

    private SimulationSettings() {}

    /** Returns all of them. */
    public static List<Setting> all() {
        List<Setting> all = new ArrayList<>();
        all.addAll(general());
        all.addAll(rails());
        all.addAll(output());
        all.addAll(heat());
        all.addAll(supplyAndFaults());
        all.addAll(sound());
        return List.copyOf(all);
    }

    private static List<Setting> general() {
        return List.of(
                new Setting.Count(
                        "seed", TEXTS.text("simulation.seed"), TEXTS.text("simulation.seed.help"), 1, 0, 1_000_000),
                new Setting.Flag("ideal", TEXTS.text("simulation.ideal"), TEXTS.text("simulation.ideal.help"), false),
                number("clipVolts", Unit.VOLT, 20, 0.1, 1000),
                number("sourceVolts", Unit.VOLT, 2, 0.01, 20),
                new Setting.Choice(
                        "sampleRate",
                        TEXTS.text("simulation.sampleRate"),
                        TEXTS.text("simulation.sampleRate.help"),
                        List.of("48000", "96000"),
                        "48000"));
    }

    private static List<Setting> rails() {
        return List.of(
                unsaid("gainDb", Unit.DECIBEL, 80),
                unsaid("mismatchDb", Unit.DECIBEL, 20),
                unsaid("railRatio", Unit.NONE, 50),
                unsaid("railOhms", Unit.OHM, 20),
                unsaid("railSeconds", Unit.SECOND, 5),
                unsaid("saturationVolts", Unit.VOLT, 50),
                unsaid("saturationOhms", Unit.OHM, 20));
    }

    private static List<Setting> output() {
        return List.of(
                unsaid("outputOhms", Unit.OHM, 20),
                unsaid("currentLimitAmps", Unit.AMPERE, 10_000),
                unsaid("kneeRatio", Unit.NONE, 1),
                unsaid("crossoverVolts", Unit.VOLT, 5),
                unsaid("noiseVolts", Unit.VOLT, 5),
                unsaid("separationDb", Unit.DECIBEL, 200),
                unsaid("lowCornerHz", Unit.HERTZ, 1000),
                unsaid("highCornerHz", Unit.HERTZ, 1e9));
    }

    private static List<Setting> heat() {
        return List.of(
                unsaid("efficiencyRatio", Unit.NONE, 1),
                unsaid("idleAmps", Unit.AMPERE, 50),
                unsaid("caseKelvinPerWatt", Unit.KELVIN_PER_WATT, 50),
                unsaid("caseSeconds", Unit.SECOND, 1e6),
                unsaid("gainLossDb", Unit.DECIBEL, 10),
                unsaid("railLossRatio", Unit.NONE, 0.5),
                unsaid("cutOutCelsius", Unit.CELSIUS, 1e6),
                number("airCelsius", Unit.CELSIUS, -100, -100, 80));
    }

    private static List<Setting> supplyAndFaults() {
        return List.of(
                unsaid("cableOhms", Unit.OHM, 5),
                unsaid("supplyLimitAmps", Unit.AMPERE, 10_000),
                new Setting.Flag(
                        "remoteSensing",
                        TEXTS.text("simulation.remoteSensing"),
                        TEXTS.text("simulation.remoteSensing.help"),
                        true),
                new Setting.Flag(
                        "meterErrors",
                        TEXTS.text("simulation.meterErrors"),
                        TEXTS.text("simulation.meterErrors.help"),
                        true),
                new Setting.Choice(
                        "fault",
                        TEXTS.text("simulation.fault"),
                        TEXTS.text("simulation.fault.help"),
                        Fault.allWords(),
                        Fault.labels(),
                        Fault.NONE.words()),
                new Setting.Count(
                        "faultChannel",
                        TEXTS.text("simulation.faultChannel"),
                        TEXTS.text("simulation.faultChannel.help"),
                        0,
                        0,
                        15),
                number("faultSeconds", Unit.SECOND, 0, 0, 1e6),
                new Setting.Flag(
                        "realPace", TEXTS.text("simulation.realPace"), TEXTS.text("simulation.realPace.help"), false));
    }

    private static List<Setting> sound() {
        return List.of(
                number("loudspeakerDb", Unit.DECIBEL, 88, 50, 120),
                number("listenerMetres", Unit.METRE, 1, 0.01, 100),
                number("backgroundDb", Unit.DECIBEL, 45, 0, 120));
    }

    private static Setting number(String id, Unit unit, double usual, double least, double most) {
        return new Setting.Number(
                id, TEXTS.text("simulation." + id), TEXTS.text("simulation." + id + ".help"), unit, usual, least, most);
    }

    private static Setting unsaid(String id, Unit unit, double most) {
        return number(id, unit, UNSAID, UNSAID, most);
    }

    /** Returns what was said, or else what holds otherwise. */
    static double said(Settings settings, String id, double otherwise) {
        double value = settings.number(id);
        return value < 0 ? otherwise : value;
    }
}
