// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** The sizes and temperature factors of IEC 60228, as data. */
public final class ConductorTable {
    private static final Messages TEXTS = Messages.of(ConductorTable.class);

    /** Where the table comes from, to be shown beside its figures. */
    public static String source() {
        return TEXTS.text("conductors.source");
    }

    private static final List<ConductorSize> SIZES = SupplyTable.rows("conductors.csv").stream()
            .map(row -> new ConductorSize(
                    row.number("squareMillimetres"),
                    row.number("class2OhmsPerKilometre"),
                    row.number("class5OhmsPerKilometre")))
            .toList();

    private static final double ZERO_OHM_KELVIN = 234.5;
    private static final double REFERENCE_CELSIUS = 20;
    private static final double ROUNDED_PER_KELVIN = 0.004;

    private ConductorTable() {}

    /** Returns the sizes from 1.5 to 95 square millimetres, smallest first. */
    public static List<ConductorSize> sizes() {
        return SIZES;
    }

    /** Returns the size of a cross-section in square millimetres; empty when it is none of the table's. */
    public static Optional<ConductorSize> size(double squareMillimetres) {
        Checks.positive(squareMillimetres, "squareMillimetres");
        return SIZES.stream()
                .filter(size -> size.squareMillimetres() == squareMillimetres)
                .findFirst();
    }

    /**
     * Returns the smallest size whose flexible conductor has no more than a resistance, there and back at 20 degrees
     * Celsius; empty when the largest has more.
     *
     * @param loopMetres there and back, above 0
     * @param highestOhms of the loop, above 0
     */
    public static Optional<ConductorSize> smallestFlexible(double loopMetres, double highestOhms) {
        Checks.positive(loopMetres, "loopMetres");
        Checks.positive(highestOhms, "highestOhms");
        return SIZES.stream()
                .filter(size -> size.flexibleOhmsPerKilometre() * loopMetres / 1000 <= highestOhms)
                .findFirst();
    }

    /**
     * Returns what a resistance measured at a temperature is to be multiplied by to have that at 20 degrees Celsius,
     * exactly for copper: 254.5 / (234.5 + t).
     *
     * @param celsius -200 to 1000
     */
    public static double exactFactor(double celsius) {
        Checks.within(celsius, -200, 1000, "celsius");
        return (ZERO_OHM_KELVIN + REFERENCE_CELSIUS) / (ZERO_OHM_KELVIN + celsius);
    }

    /**
     * Returns the same by the rounded coefficient of the standard's annex: 1 / (1 + 0.004 (t - 20)). It differs from
     * {@link #exactFactor} by 0.3 % at 75 degrees Celsius.
     *
     * @param celsius -200 to 1000
     */
    public static double roundedFactor(double celsius) {
        Checks.within(celsius, -200, 1000, "celsius");
        return 1 / (1 + ROUNDED_PER_KELVIN * (celsius - REFERENCE_CELSIUS));
    }
}
