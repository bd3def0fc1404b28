// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.time.Instant;
import java.util.OptionalDouble;

/** What stands in one place of a table. */
public sealed interface Cell {
    /** Nothing. */
    Cell BLANK = new Text("");

    /** Words. */
    record Text(String text) implements Cell {}

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
