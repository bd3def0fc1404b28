// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.units.Unit;

/** What may be set on a simulated bench. */
public final class SimulationSettings {
    /** Stands for "nobody said so". */
    private static final double UNSAID = -1;

    private static final String OTHERWISE = " -1: as usual, or none on an ideal bench.";
    private static final String OF_PROJECT = " -1: by the project.";

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
                        "seed", "seed", "Chance on this bench; the same seed gives the same results.", 1, 0, 1_000_000),
                new Setting.Flag(
                        "ideal",
                        "ideal bench",
                        "Stiff supply, hard clipping at a set level, no errors of any kind.",
                        false),
                number("clipVolts", "clipping level", "Peak at which an ideal bench clips.", Unit.VOLT, 20, 0.1, 1000),
                number("sourceVolts", "source", "The source's full output, RMS.", Unit.VOLT, 2, 0.01, 20),
                new Setting.Choice(
                        "sampleRate", "sample rate", "Of the recorder, in hertz.", List.of("48000", "96000"), "48000"));
    }

    private static List<Setting> rails() {
        return List.of(
                unsaid("gainDb", "gain", "Volts gain of the first channel." + OF_PROJECT, Unit.DECIBEL, 80),
                unsaid("mismatchDb", "mismatch", "Less gain of each further channel." + OTHERWISE, Unit.DECIBEL, 20),
                unsaid(
                        "railRatio",
                        "rails over supply",
                        "Each rail over the supply volts." + OF_PROJECT,
                        Unit.NONE,
                        50),
                unsaid(
                        "railOhms",
                        "rail resistance",
                        "What each rail sags by for each ampere." + OF_PROJECT,
                        Unit.OHM,
                        20),
                unsaid("railSeconds", "rail time", "Time constant of the sag." + OTHERWISE, Unit.SECOND, 5),
                unsaid("saturationVolts", "saturation", "What the output leaves of a rail." + OTHERWISE, Unit.VOLT, 50),
                unsaid(
                        "saturationOhms",
                        "saturation by current",
                        "What it leaves for each ampere." + OF_PROJECT,
                        Unit.OHM,
                        20));
    }

    private static List<Setting> output() {
        return List.of(
                unsaid("outputOhms", "output resistance", "Before it clips." + OTHERWISE, Unit.OHM, 20),
                unsaid("currentLimitAmps", "current limit", "Highest output current." + OTHERWISE, Unit.AMPERE, 10_000),
                unsaid(
                        "kneeRatio",
                        "knee",
                        "Share of the limit within which it bends; 0 clips hard." + OTHERWISE,
                        Unit.NONE,
                        1),
                unsaid("crossoverVolts", "crossover", "Half-width of the dead zone." + OTHERWISE, Unit.VOLT, 5),
                unsaid(
                        "noiseVolts",
                        "noise",
                        "RMS at the output, up to half the sample rate." + OTHERWISE,
                        Unit.VOLT,
                        5),
                unsaid(
                        "separationDb",
                        "separation",
                        "How far down the other channels are." + OTHERWISE,
                        Unit.DECIBEL,
                        200),
                unsaid(
                        "lowCornerHz",
                        "low corner",
                        "Of the first-order high pass; 0 for none." + OTHERWISE,
                        Unit.HERTZ,
                        1000),
                unsaid("highCornerHz", "high corner", "Of the first-order low pass." + OTHERWISE, Unit.HERTZ, 1e9));
    }

    private static List<Setting> heat() {
        return List.of(
                unsaid(
                        "efficiencyRatio",
                        "converter efficiency",
                        "Rails over supply, in power." + OF_PROJECT,
                        Unit.NONE,
                        1),
                unsaid("idleAmps", "idle current", "Without a signal." + OF_PROJECT, Unit.AMPERE, 50),
                unsaid(
                        "caseKelvinPerWatt",
                        "case to air",
                        "Thermal resistance." + OF_PROJECT,
                        Unit.KELVIN_PER_WATT,
                        50),
                unsaid("caseSeconds", "case time", "Time constant of the case's heat." + OF_PROJECT, Unit.SECOND, 1e6),
                unsaid("gainLossDb", "gain lost by heat", "For each 10 K above the air." + OTHERWISE, Unit.DECIBEL, 10),
                unsaid(
                        "railLossRatio",
                        "rails lost by heat",
                        "Share for each 10 K above the air." + OTHERWISE,
                        Unit.NONE,
                        0.5),
                unsaid(
                        "cutOutCelsius",
                        "cut-out",
                        "Case temperature at which it mutes itself." + OTHERWISE,
                        Unit.CELSIUS,
                        1e6),
                number("airCelsius", "air", "-100: by the project.", Unit.CELSIUS, -100, -100, 80));
    }

    private static List<Setting> supplyAndFaults() {
        return List.of(
                unsaid("cableOhms", "supply cable", "There and back." + OF_PROJECT, Unit.OHM, 5),
                unsaid(
                        "supplyLimitAmps",
                        "supply limit",
                        "Current at which the supply limits." + OF_PROJECT,
                        Unit.AMPERE,
                        10_000),
                new Setting.Flag(
                        "remoteSensing", "remote sensing", "Whether the supply holds the terminals' volts.", true),
                new Setting.Flag(
                        "meterErrors", "meter errors", "Whether meters are off within their specification.", true),
                new Setting.Choice("fault", "fault", "What is wrong.", Fault.allWords(), Fault.NONE.words()),
                new Setting.Count(
                        "faultChannel", "faulty channel", "From 0, where the fault is one channel's.", 0, 0, 15),
                number("faultSeconds", "fault after", "Time after which it sets in.", Unit.SECOND, 0, 0, 1e6),
                new Setting.Flag("realPace", "real pace", "Whether time passes as on a real bench.", false));
    }

    private static List<Setting> sound() {
        return List.of(
                number(
                        "loudspeakerDb",
                        "loudspeaker",
                        "Sound level at 1 m for 1 W of all channels together, in the free field.",
                        Unit.DECIBEL,
                        88,
                        50,
                        120),
                number("listenerMetres", "listener", "Distance of the microphone.", Unit.METRE, 1, 0.01, 100),
                number("backgroundDb", "background", "Sound level without a signal.", Unit.DECIBEL, 45, 0, 120));
    }

    private static Setting number(
            String id, String name, String help, Unit unit, double usual, double least, double most) {
        return new Setting.Number(id, name, help, unit, usual, least, most);
    }

    private static Setting unsaid(String id, String name, String help, Unit unit, double most) {
        return number(id, name, help, unit, UNSAID, UNSAID, most);
    }

    /** Returns what was said, or else what holds otherwise. */
    static double said(Settings settings, String id, double otherwise) {
        double value = settings.number(id);
        return value < 0 ? otherwise : value;
    }
}
