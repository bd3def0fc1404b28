// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/** Words that several sentences share. */
final class StudyWords {
    private static final Messages TEXTS = Messages.of(StudyWords.class);

    private static final Pattern PLACE = Pattern.compile("%(\\+?)(?:\\.(\\d))?([a-z%])");

    private StudyWords() {}

    /** As {@link String#format} in plain English, but "%.3g" gives up to three digits without zeros at the end. */
    static String say(String format, Object... values) {
        Matcher places = PLACE.matcher(format);
        StringBuilder text = new StringBuilder();
        int value = 0;
        while (places.find()) {
            String words;
            if (places.group(3).equals("%")) {
                words = "%";
            } else {
                boolean digits = places.group(3).equals("g");
                words = digits
                        ? number(
                                (Double) values[value],
                                Integer.parseInt(places.group(2)),
                                !places.group(1).isEmpty())
                        : String.format(Locale.ROOT, places.group(), values[value]);
                value++;
            }
            places.appendReplacement(text, Matcher.quoteReplacement(words));
        }
        return places.appendTail(text).toString();
    }

    private static String number(double value, int digits, boolean signed) {
        String sign = signed && value > 0 ? "+" : "";
        if (!Double.isFinite(value)) {
            return sign + value;
        }
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(digits)).stripTrailingZeros();
        return sign + rounded.toPlainString();
    }

    static String load(double loadOhms, Mode mode) {
        return TEXTS.text("words.load." + mode.name(), say("%.3g", loadOhms));
    }

    static String list(List<String> words) {
        if (words.size() < 2) {
            return String.join("", words);
        }
        return TEXTS.text(
                "words.and", String.join(", ", words.subList(0, words.size() - 1)), words.get(words.size() - 1));
    }
}
