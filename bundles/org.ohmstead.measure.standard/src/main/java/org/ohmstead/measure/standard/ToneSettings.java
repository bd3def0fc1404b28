// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** The settings that measurements with small tones share. */
final class ToneSettings {
    private static final Messages TEXTS = Messages.of(ToneSettings.class);

    private static final double LOWEST_HZ = 1;
    private static final double HIGHEST_HZ = 96_000;

    private ToneSettings() {}

    /** The safe level, the power that is measured at, settling and recording; and more before them. */
    static List<Setting> with(Setting... more) {
        List<Setting> all = new ArrayList<>(List.of(more));
        all.add(new Setting.Number(
                "startDb", TEXTS.text("tone.startDb"), TEXTS.text("tone.startDb.help"), Unit.DECIBEL, -40, -100, 0));
        all.add(new Setting.Number(
                "watts", TEXTS.text("tone.watts"), TEXTS.text("tone.watts.help"), Unit.WATT, 1, 0.001, 10_000));
        all.add(SearchSettings.settle());
        all.add(SearchSettings.seconds(0.2));
        return List.copyOf(all);
    }

    static Setting frequency() {
        return new Setting.Number(
                "frequencyHz",
                TEXTS.text("tone.frequencyHz"),
                TEXTS.text("tone.frequencyHz.help"),
                Unit.HERTZ,
                1000,
                LOWEST_HZ,
                HIGHEST_HZ);
    }

    static Setting frequencies(String usual) {
        return new Setting.Text(
                "frequencies", TEXTS.text("tone.frequencies"), TEXTS.text("tone.frequencies.help"), usual);
    }

    static List<Double> frequenciesHz(Settings settings) throws MeasurementException {
        List<Double> frequencies = new ArrayList<>();
        for (String text : settings.text("frequencies").split(",")) {
            double value;
            try {
                value = QuantityParser.parse(text.strip(), Unit.HERTZ).value();
            } catch (QuantityException e) {
                throw Faults.because(e, "frequencies.unread", Said.by(e));
            }
            if (value < LOWEST_HZ || value > HIGHEST_HZ) {
                throw Faults.of("frequencies.range", text.strip(), LOWEST_HZ, HIGHEST_HZ);
            }
            frequencies.add(value);
        }
        return frequencies;
    }

    /** Where a figure holds. */
    static String at(double frequencyHz) {
        return frequencyHz == Math.rint(frequencyHz)
                ? String.format(Locale.ROOT, "%.0f Hz", frequencyHz)
                : String.format(Locale.ROOT, "%.5g Hz", frequencyHz);
    }
}
