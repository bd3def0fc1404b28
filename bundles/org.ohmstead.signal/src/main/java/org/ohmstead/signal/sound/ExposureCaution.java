// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The caution that goes with every level: in a language, with what rules for workplaces state and where. */
public final class ExposureCaution {
    private static final double LOUD_DB = 80;

    private ExposureCaution() {}

    /** Returns what always stands beside levels: two sentences. */
    public static String always(Locale locale) {
        return Texts.sayIn(locale, "caution.always");
    }

    /** Returns what the limits are and who decides; two or three sentences. */
    public static String aboutLimits(Locale locale) {
        return Texts.sayIn(locale, "caution.limits");
    }

    /**
     * Returns what is to be said about a level: nothing below 80 dB(A), else that it can harm hearing, and how soon.
     *
     * @param levelDbA A-weighted level
     * @param locale the language
     */
    public static List<String> about(double levelDbA, Locale locale) {
        List<String> sentences = new ArrayList<>();
        if (levelDbA >= LOUD_DB) {
            double seconds = ExposureCriterion.NIOSH_1998.seconds(levelDbA);
            sentences.add(
                    seconds > 0
                            ? Texts.sayIn(locale, "caution.loud", levelDbA, duration(seconds, locale))
                            : Texts.sayIn(locale, "caution.never", levelDbA));
            sentences.add(Texts.sayIn(locale, "caution.protect"));
        }
        return List.copyOf(sentences);
    }

    /**
     * Returns a time in words, rounded down: "8 h", "25 min", "45 s", "under 1 s".
     *
     * @param seconds 0 or above
     * @param locale the language
     */
    public static String duration(double seconds, Locale locale) {
        Checks.notNegative("seconds", seconds);
        if (seconds < 1) {
            return Texts.sayIn(locale, "duration.moment");
        }
        if (seconds < 120) {
            return Texts.sayIn(locale, "duration.seconds", Math.floor(seconds));
        }
        double minutes = Math.floor(seconds / 60 + 1e-9);
        if (minutes < 120) {
            return Texts.sayIn(locale, "duration.minutes", minutes);
        }
        return Texts.sayIn(locale, "duration.hours", Math.floor(minutes / 60), minutes % 60);
    }
}
