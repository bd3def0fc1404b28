// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalInt;

/**
 * Wire of annealed copper by its size: American gauges, cross-sections and the resistance at a temperature. Copper has the resistivity of
 * IEC 60028, 1/58 ohm square millimetre per metre at 20 degrees Celsius, and rises by 0.393 % of that per kelvin.
 */
public final class CopperWire {
    /** Resistivity of annealed copper at 20 degrees Celsius, in ohm square millimetres per metre (IEC 60028). */
    public static final double OHM_SQUARE_MILLIMETRES_PER_METRE = 1.0 / 58;

    /** How much the resistance rises per kelvin, over that at 20 degrees Celsius (IEC 60028, constant mass). */
    public static final double PER_KELVIN = 0.00393;

    /** The temperature in degrees Celsius that resistivities are stated for. */
    public static final double REFERENCE_CELSIUS = 20;

    private static final int THICKEST_GAUGE = -3;
    private static final int THINNEST_GAUGE = 40;

    private CopperWire() {}

    /**
     * Returns the diameter in millimetres of a solid wire by its American wire gauge: 0.127 * 92^((36 - n) / 39) (ASTM B258).
     *
     * @param gauge -3 for 4/0, -2 for 3/0, -1 for 2/0, 0 for 1/0, then 1 to 40
     */
    public static double gaugeDiameterMillimetres(int gauge) {
        Checks.within(gauge, THICKEST_GAUGE, THINNEST_GAUGE, "gauge");
        return 0.127 * Math.pow(92, (36 - gauge) / 39.0);
    }

    /** Returns the cross-section in square millimetres of a wire by its American wire gauge, -3 (for 4/0) to 40. */
    public static double gaugeSquareMillimetres(int gauge) {
        double diameter = gaugeDiameterMillimetres(gauge);
        return Math.PI / 4 * diameter * diameter;
    }

    /** Returns the gauge's number for its usual writing: "4/0" is -3, "1/0" and "0" are 0, "12" is 12; empty when it is no gauge. */
    public static OptionalInt gauge(String text) {
        String digits = Checks.present(text, "text").strip();
        if (digits.matches("[1-4]/0")) {
            return OptionalInt.of('1' - digits.charAt(0));
        }
        if (digits.matches("[0-9]|[1-3][0-9]|40")) {
            return OptionalInt.of(Integer.parseInt(digits));
        }
        return OptionalInt.empty();
    }

    /** Returns the usual writing of a gauge's number, -3 to 40: "4/0" for -3, "1/0" for 0, "12" for 12. */
    public static String gaugeText(int gauge) {
        Checks.within(gauge, THICKEST_GAUGE, THINNEST_GAUGE, "gauge");
        return gauge <= 0 ? (1 - gauge) + "/0" : Integer.toString(gauge);
    }

    /**
     * Returns the resistance of copper wire in ohms.
     *
     * @param squareMillimetres its cross-section, above 0
     * @param metres its length, at least 0; for a pair of leads both of them together
     * @param celsius its temperature
     */
    public static double ohms(double squareMillimetres, double metres, double celsius) {
        Checks.positive(squareMillimetres, "squareMillimetres");
        Checks.notNegative(metres, "metres");
        return OHM_SQUARE_MILLIMETRES_PER_METRE * metres / squareMillimetres * temperatureRatio(celsius);
    }

    /** Returns the resistance at a temperature over that at 20 degrees Celsius. */
    public static double temperatureRatio(double celsius) {
        Checks.within(celsius, -200, 1000, "celsius");
        return 1 + PER_KELVIN * (celsius - REFERENCE_CELSIUS);
    }
}
