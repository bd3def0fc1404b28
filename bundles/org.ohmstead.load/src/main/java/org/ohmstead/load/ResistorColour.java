// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The colours of rings on resistors and what each stands for (IEC 60062:2016); the two letters are those of IEC 60757. */
public enum ResistorColour {
    /** 0. */
    BLACK("BK", 0, 0, 250),
    /** 1. */
    BROWN("BN", 1, 0.01, 100),
    /** 2. */
    RED("RD", 2, 0.02, 50),
    /** 3. */
    ORANGE("OG", 3, 0.0005, 15),
    /** 4. */
    YELLOW("YE", 4, 0.0002, 25),
    /** 5. */
    GREEN("GN", 5, 0.005, 20),
    /** 6. */
    BLUE("BU", 6, 0.0025, 10),
    /** 7. */
    VIOLET("VT", 7, 0.001, 5),
    /** 8. */
    GREY("GY", 8, 0.0001, 1),
    /** 9. */
    WHITE("WH", 9, 0, 0),
    /** A tenth. */
    GOLD("GD", -1, 0.05, 0),
    /** A hundredth. */
    SILVER("SR", -2, 0.1, 0),
    /** A thousandth. */
    PINK("PK", -3, 0, 0);

    private static final double SAME = 1e-9;

    private final String letters;
    private final int exponent;
    private final double toleranceRatio;
    private final double partsPerMillion;

    ResistorColour(String letters, int exponent, double toleranceRatio, double partsPerMillion) {
        this.letters = letters;
        this.exponent = exponent;
        this.toleranceRatio = toleranceRatio;
        this.partsPerMillion = partsPerMillion;
    }

    /** Returns the digit that it stands for in the first rings, or empty for the metals and pink. */
    public Optional<Integer> digit() {
        return exponent < 0 ? Optional.empty() : Optional.of(exponent);
    }

    /** Returns the power of ten that it stands for as the multiplier; every colour has one. */
    public Optional<Integer> exponent() {
        return Optional.of(exponent);
    }

    /** Returns the tolerance that it stands for, 0.05 for 5 %, or empty. */
    public Optional<Double> toleranceRatio() {
        return toleranceRatio > 0 ? Optional.of(toleranceRatio) : Optional.empty();
    }

    /** Returns the temperature coefficient per kelvin that it stands for in a sixth ring, as a magnitude, or empty. */
    public Optional<Double> temperatureCoefficientPerKelvin() {
        return partsPerMillion > 0 ? Optional.of(partsPerMillion / 1e6) : Optional.empty();
    }

    /** Returns its English name in small letters. */
    public String spoken() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns its two letters of IEC 60757, such as BK for black. */
    public String letters() {
        return letters;
    }

    static Optional<ResistorColour> named(String word) {
        return Arrays.stream(values())
                .filter(colour -> colour.name().equalsIgnoreCase(word) || colour.letters.equalsIgnoreCase(word))
                .findFirst();
    }

    static ResistorColour ofExponent(int exponent) {
        return Arrays.stream(values())
                .filter(colour -> colour.exponent == exponent)
                .findFirst()
                .orElseThrow();
    }

    static Optional<ResistorColour> ofTolerance(double ratio) {
        return Arrays.stream(values())
                .filter(colour -> colour.toleranceRatio > 0 && Math.abs(colour.toleranceRatio - ratio) < SAME)
                .findFirst();
    }

    static Optional<ResistorColour> ofCoefficient(double perKelvin) {
        return Arrays.stream(values())
                .filter(colour ->
                        colour.partsPerMillion > 0 && Math.abs(colour.partsPerMillion / 1e6 - perKelvin) < SAME)
                .findFirst();
    }

    static String names() {
        return Arrays.stream(values()).map(ResistorColour::spoken).collect(Collectors.joining(", "));
    }
}
