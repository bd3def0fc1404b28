// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.time.Instant;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** What stands in one place of a table. */
public sealed interface Cell {
    /** Nothing. */
    Cell BLANK = new Text("");

    /** Words. Half of a surrogate pair, which no file can hold, is U+FFFD in them; no log can hold one either. */
    record Text(String text) implements Cell {
        /** A whole pair is one code point, which these are not. */
        private static final Pattern HALVES = Pattern.compile("[\\x{D800}-\\x{DFFF}]");

        public Text {
            if (text.chars().anyMatch(character -> Character.isSurrogate((char) character))) {
                text = HALVES.matcher(text).replaceAll("\uFFFD");
            }
        }
    }

    /** A number, in the unit of its column. */
    record Number(double value) implements Cell {}

    /** A moment. */
    record Time(Instant moment) implements Cell {}

    static Cell of(String text) {
        return text.isEmpty() ? BLANK : new Text(text);
    }

    static Cell of(double value) {
        return new Number(value);
    }

    static Cell of(OptionalDouble value) {
        return value.isPresent() ? new Number(value.getAsDouble()) : BLANK;
    }
}
