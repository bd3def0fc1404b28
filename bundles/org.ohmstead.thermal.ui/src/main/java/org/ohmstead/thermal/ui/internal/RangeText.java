// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.model.Range;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Numbers;

/**
 * How a range is written in a field: "0.4 to 0.5", or one number when it is known. A dash, two points or "±" between the numbers does as
 * well, and the unit may stand behind either.
 *
 * @param measure what a bare number means
 */
record RangeText(Measure measure) {
    private static final Messages TEXTS = Messages.of(RangeText.class);
    private static final Pattern BETWEEN = Pattern.compile(
            "\\s+(?:to|bis)(?:\\s+|$)|\\s*(?:\\u2013|\\u2026|\\.\\.+)\\s*|\\s+-\\s+|(?<=[0-9])-(?=[0-9.,])");
    private static final Pattern ABOUT = Pattern.compile("\\s*(?:\\u00b1|\\+/?-)\\s*");

    /**
     * Reads a range; empty text gives none.
     *
     * @throws IllegalArgumentException when it is none; the message says what would be
     */
    Optional<Range> read(String text) {
        String trimmed = text.strip();
        if (trimmed.isEmpty()) {
            return Optional.empty();
        }
        Matcher about = ABOUT.matcher(trimmed);
        if (about.find() && about.start() > 0) {
            double middle = measure.read(trimmed.substring(0, about.start()));
            double half = Math.abs(measure.read(trimmed.substring(about.end())));
            return Optional.of(new Range(middle - half, middle + half));
        }
        String[] ends = BETWEEN.split(trimmed, -1);
        if (ends.length == 1) {
            return Optional.of(Range.of(measure.read(trimmed)));
        }
        if (ends.length > 2 || ends[0].isEmpty() || ends[1].isEmpty()) {
            throw new IllegalArgumentException(TEXTS.text("range.none", trimmed, example()));
        }
        double low = measure.read(ends[0]);
        double high = measure.read(ends[1]);
        if (low > high) {
            throw new IllegalArgumentException(TEXTS.text("range.falls", write(Optional.of(new Range(high, low)))));
        }
        return Optional.of(new Range(low, high));
    }

    /** Returns the text of a range, without the unit. */
    String write(Optional<Range> range) {
        return range.map(this::write).orElse("");
    }

    private String write(Range range) {
        String low = Numbers.localised(measure.exact(range.low()));
        return range.known() ? low : TEXTS.text("range.ends", low, Numbers.localised(measure.exact(range.high())));
    }

    private static String example() {
        return TEXTS.text("range.ends", Numbers.localised("0.4"), Numbers.localised("0.5"));
    }
}
