// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.measure.Setting;
import org.ohmstead.units.Unit;

/** The settings of a bench of instruments, and the names of their roles in them. */
final class BenchSettings {
    static final String SUPPLY = "supply";
    static final String GENERATOR = "generator";
    static final String SCOPE = "oscilloscope";
    static final String VOLTMETER = "voltmeter";
    static final String AMMETER = "ammeter";
    static final String CASE = "caseThermometer";
    static final String AIR = "airThermometer";

    private static final List<Setting> ALL = all();

    private BenchSettings() {}

    static List<Setting> list() {
        return ALL;
    }

    private static List<Setting> all() {
        List<Setting> settings = new ArrayList<>();
        settings.add(text(
                "commands.folder",
                "Folder of command sets",
                "A folder with command sets of your own; those that come with Ohmstead need none.",
                ""));
        supply(settings);
        generator(settings);
        scope(settings);
        meters(settings);
        link(settings);
        return List.copyOf(settings);
    }

    private static void supply(List<Setting> settings) {
        instrument(settings, SUPPLY, "Supply", "supply");
        settings.add(text(SUPPLY + ".channel", "Supply: output", "The number of its output, if it has several.", "1"));
        settings.add(new Setting.Number(
                SUPPLY + ".limitAmps",
                "Supply: current limit",
                "The current at which it limits; 0 for that of the project's bench.",
                Unit.AMPERE,
                0,
                0,
                10_000));
        settings.add(new Setting.Number(
                SUPPLY + ".mostVolts",
                "Supply: most volts",
                "What it is never set above, whatever a plan asks for.",
                Unit.VOLT,
                16,
                0.1,
                1000));
        settings.add(new Setting.Number(
                SUPPLY + ".settleSeconds",
                "Supply: settling time",
                "How long to wait after new volts before anything is measured.",
                Unit.SECOND,
                0.5,
                0,
                60));
        settings.add(new Setting.Flag(
                SUPPLY + ".remoteSense",
                "Supply: sense leads at the amplifier",
                "Whether its own reading of volts is that at the amplifier's terminals.",
                false));
        settings.add(new Setting.Number(
                SUPPLY + ".agreementVolts",
                "Supply: agreement",
                "How far the volts at the terminals may be from what was set; else the supply is switched off.",
                Unit.VOLT,
                1,
                0.01,
                100));
    }

    private static void generator(List<Setting> settings) {
        instrument(settings, GENERATOR, "Generator", "generator");
        settings.add(text(
                GENERATOR + ".outputs",
                "Generator: outputs",
                "The numbers of its outputs, first channel first, such as 1,2; a single one feeds all channels.",
                "1"));
        settings.add(new Setting.Number(
                GENERATOR + ".fullOutputVoltsRms",
                "Generator: full output (V RMS)",
                "The level that a drive of 0 dB stands for; it is never set above.",
                Unit.VOLT,
                1,
                1e-3,
                100));
    }

    private static void scope(List<Setting> settings) {
        instrument(settings, SCOPE, "Oscilloscope", "oscilloscope-float");
        settings.add(text(
                SCOPE + ".channels",
                "Oscilloscope: channels at the output",
                "The numbers of its channels at the amplifier's outputs, first channel first, such as 1,2.",
                "1"));
        settings.add(text(
                SCOPE + ".inputChannel",
                "Oscilloscope: channel at the input",
                "The number of its channel at the amplifier's input; empty for none.",
                ""));
        settings.add(new Setting.Number(
                SCOPE + ".attenuation",
                "Oscilloscope: attenuation at the output",
                "Volts at the amplifier's output for each volt at the oscilloscope, such as 10 for a divider by ten.",
                Unit.NONE,
                1,
                1e-3,
                1e4));
        settings.add(new Setting.Number(
                SCOPE + ".inputAttenuation",
                "Oscilloscope: attenuation at the input",
                "Volts at the amplifier's input for each volt at the oscilloscope.",
                Unit.NONE,
                1,
                1e-3,
                1e4));
        settings.add(text(
                SCOPE + ".ranges",
                "Oscilloscope: ranges",
                "The highest peak volts of each of its ranges, rising, as at its own input.",
                "0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50"));
        settings.add(new Setting.Number(
                SCOPE + ".sampleRateHz",
                "Oscilloscope: sample rate",
                "Samples for each second.",
                Unit.HERTZ,
                200_000,
                1000,
                1e9));
        settings.add(new Setting.Count(
                SCOPE + ".mostPoints",
                "Oscilloscope: most samples",
                "The longest record it can take.",
                1_000_000,
                100,
                1 << 26));
        settings.add(new Setting.Choice(
                SCOPE + ".bridged",
                "Oscilloscope: bridged output",
                "Whether a bridged output is the difference of its first two channels, or on its first by a"
                        + " differential probe.",
                List.of("difference", "first"),
                "difference"));
    }

    private static void meters(List<Setting> settings) {
        meter(settings, VOLTMETER, "Voltmeter at the supply terminals");
        meter(settings, AMMETER, "Meter of the supply current");
        settings.add(new Setting.Number(
                AMMETER + ".shuntOhms",
                "Meter of the supply current: shunt",
                "The resistance whose volts it reads; 0 when it reads amperes itself.",
                Unit.OHM,
                0,
                0,
                10));
        meter(settings, CASE, "Thermometer at the case");
        meter(settings, AIR, "Thermometer of the air");
    }

    private static void link(List<Setting> settings) {
        settings.add(new Setting.Number(
                "link.connectSeconds",
                "Time to connect",
                "The longest that making a link may take.",
                Unit.SECOND,
                3,
                0.05,
                60));
        settings.add(new Setting.Number(
                "link.answerSeconds",
                "Time to answer",
                "The longest that an instrument may take to answer.",
                Unit.SECOND,
                5,
                0.05,
                120));
        settings.add(new Setting.Choice(
                "link.lineEnd",
                "End of commands",
                "What ends a command: LF, a line feed, suits nearly all.",
                List.of("LF", "CRLF", "CR"),
                "LF"));
        settings.add(new Setting.Flag(
                "link.reset",
                "Reset on opening",
                "Whether each instrument is brought to its state after *RST first.",
                true));
        settings.add(new Setting.Flag(
                "load.changedInTime",
                "Load changed in time",
                "Whether somebody connects the load and mode of each step before it runs; else only those of the"
                        + " first.",
                false));
    }

    private static void meter(List<Setting> settings, String id, String name) {
        instrument(settings, id, name, "multimeter");
        settings.add(text(id + ".channel", name + ": channel", "The number of its channel, if it has several.", "1"));
    }

    private static void instrument(List<Setting> settings, String id, String name, String set) {
        settings.add(text(
                id + ".address",
                name + ": address",
                "Where it listens, such as 192.0.2.7:5025; empty when there is none.",
                ""));
        settings.add(text(
                id + ".commands",
                name + ": command set",
                "The short name of its command set, such as " + set + ".",
                set));
    }

    private static Setting text(String id, String name, String help, String value) {
        return new Setting.Text(id, name, help, value);
    }
}
