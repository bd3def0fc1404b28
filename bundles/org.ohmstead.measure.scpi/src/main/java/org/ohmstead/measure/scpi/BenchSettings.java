// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.measure.Setting;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** The settings of a bench of instruments, and the names of their roles in them. */
final class BenchSettings {
    private static final Messages TEXTS = Messages.of(BenchSettings.class);

    static final String SUPPLY = "supply";
    static final String GENERATOR = "generator";
    static final String SCOPE = "oscilloscope";
    static final String VOLTMETER = "voltmeter";
    static final String AMMETER = "ammeter";
    static final String CASE = "caseThermometer";
    static final String AIR = "airThermometer";

    private BenchSettings() {}

    /** All of them, in the language spoken now. */
    static List<Setting> list() {
        List<Setting> settings = new ArrayList<>();
        settings.add(text("commands.folder", TEXTS.text("commands.folder"), TEXTS.text("commands.folder.help"), ""));
        supply(settings);
        generator(settings);
        scope(settings);
        meters(settings);
        link(settings);
        return List.copyOf(settings);
    }

    private static void supply(List<Setting> settings) {
        instrument(settings, SUPPLY, TEXTS.text("supply"), "supply");
        settings.add(text(SUPPLY + ".channel", TEXTS.text("supply.channel"), TEXTS.text("supply.channel.help"), "1"));
        settings.add(new Setting.Number(
                SUPPLY + ".limitAmps",
                TEXTS.text("supply.limitAmps"),
                TEXTS.text("supply.limitAmps.help"),
                Unit.AMPERE,
                0,
                0,
                10_000));
        settings.add(new Setting.Number(
                SUPPLY + ".mostVolts",
                TEXTS.text("supply.mostVolts"),
                TEXTS.text("supply.mostVolts.help"),
                Unit.VOLT,
                16,
                0.1,
                1000));
        settings.add(new Setting.Number(
                SUPPLY + ".settleSeconds",
                TEXTS.text("supply.settleSeconds"),
                TEXTS.text("supply.settleSeconds.help"),
                Unit.SECOND,
                0.5,
                0,
                60));
        settings.add(new Setting.Flag(
                SUPPLY + ".remoteSense",
                TEXTS.text("supply.remoteSense"),
                TEXTS.text("supply.remoteSense.help"),
                false));
        settings.add(new Setting.Number(
                SUPPLY + ".agreementVolts",
                TEXTS.text("supply.agreementVolts"),
                TEXTS.text("supply.agreementVolts.help"),
                Unit.VOLT,
                1,
                0.01,
                100));
    }

    private static void generator(List<Setting> settings) {
        instrument(settings, GENERATOR, TEXTS.text("generator"), "generator");
        settings.add(text(
                GENERATOR + ".outputs", TEXTS.text("generator.outputs"), TEXTS.text("generator.outputs.help"), "1"));
        settings.add(new Setting.Number(
                GENERATOR + ".fullOutputVoltsRms",
                TEXTS.text("generator.fullOutputVoltsRms"),
                TEXTS.text("generator.fullOutputVoltsRms.help"),
                Unit.VOLT,
                1,
                1e-3,
                100));
    }

    private static void scope(List<Setting> settings) {
        instrument(settings, SCOPE, TEXTS.text("oscilloscope"), "oscilloscope-float");
        settings.add(text(
                SCOPE + ".channels",
                TEXTS.text("oscilloscope.channels"),
                TEXTS.text("oscilloscope.channels.help"),
                "1"));
        settings.add(text(
                SCOPE + ".inputChannel",
                TEXTS.text("oscilloscope.inputChannel"),
                TEXTS.text("oscilloscope.inputChannel.help"),
                ""));
        settings.add(new Setting.Number(
                SCOPE + ".attenuation",
                TEXTS.text("oscilloscope.attenuation"),
                TEXTS.text("oscilloscope.attenuation.help"),
                Unit.NONE,
                1,
                1e-3,
                1e4));
        settings.add(new Setting.Number(
                SCOPE + ".inputAttenuation",
                TEXTS.text("oscilloscope.inputAttenuation"),
                TEXTS.text("oscilloscope.inputAttenuation.help"),
                Unit.NONE,
                1,
                1e-3,
                1e4));
        settings.add(text(
                SCOPE + ".ranges",
                TEXTS.text("oscilloscope.ranges"),
                TEXTS.text("oscilloscope.ranges.help"),
                "0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50"));
        settings.add(new Setting.Number(
                SCOPE + ".sampleRateHz",
                TEXTS.text("oscilloscope.sampleRateHz"),
                TEXTS.text("oscilloscope.sampleRateHz.help"),
                Unit.HERTZ,
                200_000,
                1000,
                1e9));
        settings.add(new Setting.Count(
                SCOPE + ".mostPoints",
                TEXTS.text("oscilloscope.mostPoints"),
                TEXTS.text("oscilloscope.mostPoints.help"),
                1_000_000,
                100,
                1 << 26));
        settings.add(new Setting.Choice(
                SCOPE + ".bridged",
                TEXTS.text("oscilloscope.bridged"),
                TEXTS.text("oscilloscope.bridged.help"),
                List.of("difference", "first"),
                List.of(TEXTS.text("oscilloscope.bridged.difference"), TEXTS.text("oscilloscope.bridged.first")),
                "difference"));
    }

    private static void meters(List<Setting> settings) {
        meter(settings, VOLTMETER, TEXTS.text("voltmeter"));
        meter(settings, AMMETER, TEXTS.text("ammeter"));
        settings.add(new Setting.Number(
                AMMETER + ".shuntOhms",
                TEXTS.text("ammeter.shuntOhms"),
                TEXTS.text("ammeter.shuntOhms.help"),
                Unit.OHM,
                0,
                0,
                10));
        meter(settings, CASE, TEXTS.text("caseThermometer"));
        meter(settings, AIR, TEXTS.text("airThermometer"));
    }

    private static void link(List<Setting> settings) {
        settings.add(new Setting.Number(
                "link.connectSeconds",
                TEXTS.text("link.connectSeconds"),
                TEXTS.text("link.connectSeconds.help"),
                Unit.SECOND,
                3,
                0.05,
                60));
        settings.add(new Setting.Number(
                "link.answerSeconds",
                TEXTS.text("link.answerSeconds"),
                TEXTS.text("link.answerSeconds.help"),
                Unit.SECOND,
                5,
                0.05,
                120));
        settings.add(new Setting.Choice(
                "link.lineEnd",
                TEXTS.text("link.lineEnd"),
                TEXTS.text("link.lineEnd.help"),
                List.of("LF", "CRLF", "CR"),
                "LF"));
        settings.add(new Setting.Flag("link.reset", TEXTS.text("link.reset"), TEXTS.text("link.reset.help"), true));
        settings.add(new Setting.Flag(
                "load.changedInTime", TEXTS.text("load.changedInTime"), TEXTS.text("load.changedInTime.help"), false));
    }

    private static void meter(List<Setting> settings, String id, String name) {
        instrument(settings, id, name, "multimeter");
        settings.add(text(
                id + ".channel", TEXTS.text("instrument.channel", name), TEXTS.text("instrument.channel.help"), "1"));
    }

    private static void instrument(List<Setting> settings, String id, String name, String set) {
        settings.add(text(
                id + ".address", TEXTS.text("instrument.address", name), TEXTS.text("instrument.address.help"), ""));
        settings.add(text(
                id + ".commands",
                TEXTS.text("instrument.commands", name),
                TEXTS.text("instrument.commands.help", set),
                set));
    }

    private static Setting text(String id, String name, String help, String value) {
        return new Setting.Text(id, name, help, value);
    }
}
