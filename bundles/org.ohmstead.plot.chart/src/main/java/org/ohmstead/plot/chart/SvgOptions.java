// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How a chart is written as SVG.
 *
 * @param idPrefix begins every id within the element, so that several charts can stand in one page: a letter, then
 *     letters, digits, hyphens or underscores; empty to derive one from the content (equal charts then have equal ids)
 * @param responsive true for {@code width="100%"}, so that the chart fills its container; false for the size in points
 */
public record SvgOptions(Optional<String> idPrefix, boolean responsive) {
    private static final Pattern PREFIX = Pattern.compile("[A-Za-z][A-Za-z0-9_-]*");

    /** Checks the parameters. */
    public SvgOptions {
        Objects.requireNonNull(idPrefix, "idPrefix");
        if (idPrefix.isPresent() && !PREFIX.matcher(idPrefix.get()).matches()) {
            throw new IllegalArgumentException("idPrefix must be a letter followed by letters, digits, hyphens or"
                    + " underscores but is \"" + idPrefix.get() + "\".");
        }
    }

    /** Returns options for a chart of fixed size with an id prefix from its content. */
    public static SvgOptions fixedSize() {
        return new SvgOptions(Optional.empty(), false);
    }

    /** Returns options for a chart of fixed size with the given id prefix. */
    public static SvgOptions fixedSize(String idPrefix) {
        return new SvgOptions(Optional.of(idPrefix), false);
    }

    /** Returns options for a chart that fills its container, with the given id prefix. */
    public static SvgOptions responsive(String idPrefix) {
        return new SvgOptions(Optional.of(idPrefix), true);
    }
}
