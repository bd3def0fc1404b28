// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.awt.Font;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.plot.chart.internal.BundledFonts;

/**
 * The type faces of a chart. The size of {@code regular} in points is the size of axis labels and legend; the heading
 * is a little larger, the numbers along the axes are a little smaller.
 *
 * @param regular for all but the heading
 * @param bold for the heading
 * @param svgFamilies family names written into SVG, the wanted one first; a generic one is added at the end
 */
public record ChartFonts(Font regular, Font bold, List<String> svgFamilies) {
    private static final float STANDARD_POINTS = 10;

    private static final List<String> COMMON_FAMILIES =
            List.of("Helvetica Neue", "Arial", "Liberation Sans", "DejaVu Sans");

    /** Checks the parameters and copies the names. */
    public ChartFonts {
        Objects.requireNonNull(regular, "regular");
        Objects.requireNonNull(bold, "bold");
        svgFamilies = List.copyOf(svgFamilies);
        for (String family : svgFamilies) {
            if (family.isBlank() || family.indexOf('\'') >= 0 || family.indexOf('"') >= 0) {
                throw new IllegalArgumentException(
                        "svgFamilies must be names without quotation marks but one is \"" + family + "\".");
            }
        }
    }

    /** Makes a set whose SVG names the family of {@code regular} first and common sans-serif families after it. */
    public ChartFonts(Font regular, Font bold) {
        this(
                regular,
                bold,
                Stream.concat(
                                Stream.of(regular.getFamily()).filter(family -> !isLogical(family)),
                                COMMON_FAMILIES.stream())
                        .distinct()
                        .toList());
    }

    /** Returns the sans-serif face that the Java runtime provides, 10 points. */
    public static ChartFonts standard() {
        Font regular = new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(STANDARD_POINTS);
        return new ChartFonts(regular, regular.deriveFont(Font.BOLD));
    }

    /** Returns Open Sans, which comes with this bundle, 10 points; the only faces that a PDF can carry. */
    public static ChartFonts bundled() {
        return new ChartFonts(
                BundledFonts.regular().deriveFont(STANDARD_POINTS),
                BundledFonts.bold().deriveFont(STANDARD_POINTS),
                Stream.concat(Stream.of(BundledFonts.FAMILY), COMMON_FAMILIES.stream())
                        .toList());
    }

    /** Returns the same faces with {@code points}, above 0, as the size of {@code regular}. */
    public ChartFonts withSize(double points) {
        if (!(points > 0) || !Double.isFinite(points)) {
            throw new IllegalArgumentException("points must be above 0 but is " + points + ".");
        }
        return new ChartFonts(regular.deriveFont((float) points), bold.deriveFont((float) points), svgFamilies);
    }

    /** Returns the value of the SVG attribute font-family: all names in single quotes, then sans-serif. */
    public String svgFontFamily() {
        return Stream.concat(svgFamilies.stream().map(family -> "'" + family + "'"), Stream.of("sans-serif"))
                .collect(Collectors.joining(", "));
    }

    private static boolean isLogical(String family) {
        return Stream.of(Font.SANS_SERIF, Font.SERIF, Font.MONOSPACED, Font.DIALOG, Font.DIALOG_INPUT)
                .anyMatch(family::equalsIgnoreCase);
    }
}
