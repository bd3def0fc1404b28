// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.Locale;
import java.util.regex.Pattern;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.units.text.Messages;

/** The texts of the view in the language spoken now. */
final class Texts {
    private static final Messages MESSAGES = Messages.of(Texts.class);
    /** The space between a number and its unit, where a line must not end. */
    private static final Pattern BEFORE_UNIT = Pattern.compile(
            "(?<=\\d) (?=(?:[pn\u00b5mkMG]?(?:V|A|\u03a9|W|Hz|s|H|F|J|m|dB|K)|K/W|\u00b0C|%|mm\u00b2)(?!\\p{L}))");

    private static final String NO_BREAK = "\u00a0";

    private Texts() {}

    static String say(String key, Object... arguments) {
        return MESSAGES.text(key, arguments);
    }

    static Locale locale() {
        return MESSAGES.locale();
    }

    /** Returns a text for a widget that would take an ampersand for the mark of a key; numbers and their units stay together. */
    static String plain(String text) {
        return BEFORE_UNIT.matcher(text).replaceAll(NO_BREAK).replace("&", "&&");
    }

    /** Returns how a lesson is called in a list: its place from 1, and its title. */
    static String numbered(int index, Lesson lesson) {
        return say("list.lesson", String.valueOf(index + 1), lesson.title());
    }
}
