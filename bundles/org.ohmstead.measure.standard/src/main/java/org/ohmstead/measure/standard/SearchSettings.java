// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** The settings that every search for an end point has. */
final class SearchSettings {
    private static final Messages TEXTS = Messages.of(SearchSettings.class);

    private static final double LEAST_CYCLES = 12;

    private SearchSettings() {}

    static List<Setting> all() {
        return List.of(
                new Setting.Number(
                        "startDb",
                        TEXTS.text("search.startDb"),
                        TEXTS.text("search.startDb.help"),
                        Unit.DECIBEL,
                        -40,
                        -100,
                        0),
                new Setting.Number(
                        "highestDb",
                        TEXTS.text("search.highestDb"),
                        TEXTS.text("search.highestDb.help"),
                        Unit.DECIBEL,
                        0,
                        -100,
                        0),
                settle(),
                seconds(0.1),
                new Setting.Count(
                        "acquisitions",
                        TEXTS.text("search.acquisitions"),
                        TEXTS.text("search.acquisitions.help"),
                        12,
                        3,
                        60));
    }

    static Setting settle() {
        return new Setting.Number(
                "settleSeconds",
                TEXTS.text("search.settleSeconds"),
                TEXTS.text("search.settleSeconds.help"),
                Unit.SECOND,
                0.1,
                0,
                60);
    }

    static Setting seconds(double usual) {
        return new Setting.Number(
                "recordSeconds",
                TEXTS.text("search.recordSeconds"),
                TEXTS.text("search.recordSeconds.help"),
                Unit.SECOND,
                usual,
                0.01,
                60);
    }

    static LevelSearch.Limits limits(Settings settings, Stimulus stimulus) {
        return new LevelSearch.Limits(
                settings.number("startDb"),
                settings.number("highestDb"),
                settings.count("acquisitions"),
                recordSeconds(settings, stimulus));
    }

    /** At least a dozen cycles; of bursts at least a whole one wherever the record begins. */
    static double recordSeconds(Settings settings, Stimulus stimulus) {
        double least = stimulus instanceof Stimulus.ToneBurst burst
                ? burst.periodSeconds() + 2 * burst.onSeconds()
                : LEAST_CYCLES / stimulus.frequencyHz();
        return Math.max(settings.number("recordSeconds"), least);
    }
}
