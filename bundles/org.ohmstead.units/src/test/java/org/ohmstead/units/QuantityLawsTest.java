// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** What must hold for every quantity that is printed, and for every text that is read. */
class QuantityLawsTest {
    private static final Map<String, Integer> PREFIX_EXPONENTS = Map.ofEntries(
            Map.entry("p", -12),
            Map.entry("n", -9),
            Map.entry("u", -6),
            Map.entry("\u00b5", -6),
            Map.entry("\u03bc", -6),
            Map.entry("m", -3),
            Map.entry("", 0),
            Map.entry("k", 3),
            Map.entry("K", 3),
            Map.entry("M", 6),
            Map.entry("G", 9));

    private static final Map<String, Integer> CODE_EXPONENTS =
            Map.of("R", 0, "r", 0, "L", -3, "k", 3, "K", 3, "M", 6, "G", 9, "n", -9, "p", -12);

    @Property(seed = "20261101", tries = 500)
    void everyFigureReadsBackExactly(
            @ForAll("values") double value, @ForAll Unit unit, @ForAll("locales") Locale locale)
            throws QuantityException {
        String text = QuantityFormat.localised(17, locale).format(new Quantity(value, unit));
        Quantity read = QuantityParser.parse(text, unit);
        assertEquals(unit, read.unit());
        assertTrue(value == read.value(), () -> text + " was printed for " + value + " and reads as " + read.value());
    }

    @Property(seed = "20261102", tries = 500)
    void printedFiguresKeepTheirOrder(
            @ForAll("values") double first,
            @ForAll("values") double second,
            @ForAll Unit unit,
            @ForAll @IntRange(min = 1, max = 17) int digits)
            throws QuantityException {
        // Rounded up, the largest doubles are more than a double can hold.
        Assume.that(Math.abs(first) < 1e308 && Math.abs(second) < 1e308);
        double firstRead = printedAndRead(first, unit, digits);
        double secondRead = printedAndRead(second, unit, digits);
        assertTrue(
                first <= second ? firstRead <= secondRead : firstRead >= secondRead,
                () -> first + ", " + second + " became " + firstRead + ", " + secondRead);
    }

    @Property(seed = "20261103", tries = 500)
    void theLastPrintedDigitIsRightAndSignsMirror(
            @ForAll("values") double value, @ForAll Unit unit, @ForAll @IntRange(min = 1, max = 17) int digits) {
        QuantityFormat format = QuantityFormat.digits(digits);
        String text = format.format(value);
        BigDecimal exact = new BigDecimal(value);
        BigDecimal shown = new BigDecimal(text);
        if (exact.signum() == 0) {
            assertEquals(0, shown.signum());
            return;
        }
        int exponent = exact.precision() - exact.scale() - 1;
        BigDecimal halfStep = new BigDecimal("0.5").movePointRight(exponent + 1 - digits);
        assertTrue(shown.subtract(exact).abs().compareTo(halfStep) <= 0, text);
        String magnitude = format.format(new Quantity(Math.abs(value), unit));
        assertEquals(value < 0 ? "-" + magnitude : magnitude, format.format(new Quantity(value, unit)));
    }

    @Property(seed = "20261104", tries = 600)
    void numbersWithPrefixMeanWhatDecimalArithmeticSays(
            @ForAll("decimals") String number,
            @ForAll("exponents") String exponent,
            @ForAll("prefixes") String prefix,
            @ForAll("prefixedUnits") Unit unit,
            @ForAll boolean comma,
            @ForAll boolean space)
            throws QuantityException {
        String written = (comma ? number.replace('.', ',') : number) + exponent;
        String text = written + (space ? " " : "") + prefix + unit.symbol();
        double expected = new BigDecimal(number + exponent)
                .movePointRight(PREFIX_EXPONENTS.get(prefix))
                .doubleValue();
        assertEquals(expected, QuantityParser.parse(text, unit).value(), 0, text);
    }

    @Property(seed = "20261105", tries = 400)
    void letterCodesMeanTheirDecimalNumber(
            @ForAll @IntRange(max = 9999) int whole,
            @ForAll("digitRuns") String behind,
            @ForAll("codes") String letter,
            @ForAll boolean negative,
            @ForAll boolean withSymbol)
            throws QuantityException {
        String sign = negative ? "-" : "";
        String text = sign + whole + letter + behind + (withSymbol ? " \u03a9" : "");
        double expected = new BigDecimal(sign + whole + "." + behind)
                .movePointRight(CODE_EXPONENTS.get(letter))
                .doubleValue();
        assertEquals(expected, QuantityParser.parse(text, Unit.OHM).value(), 0, text);
    }

    @Property(seed = "20261106", tries = 1500)
    void whatIsAcceptedPrintsAndReadsAsTheSame(@ForAll("scribbles") String text, @ForAll Unit unit) {
        try {
            Quantity read = QuantityParser.parse(text, unit);
            String printed = QuantityFormat.digits(17).format(read);
            Quantity again = QuantityParser.parse(printed, unit);
            assertTrue(read.value() == again.value(), () -> text + " is " + read + ", printed " + printed);
            assertTrue(text.chars().anyMatch(Character::isDigit), text);
        } catch (QuantityException refused) {
            assertTrue(refused.position() >= 0 && refused.position() <= text.length(), text);
        }
    }

    @Property(seed = "20261109", tries = 400)
    void anotherUnitIsRefused(@ForAll("values") double value, @ForAll Unit written, @ForAll Unit asked) {
        // A kilo may be written with a capital, and alone, so that kelvin reads as such.
        Assume.that(written != asked && written != Unit.NONE && !(written == Unit.KELVIN && asked.takesPrefix()));
        String text = QuantityFormat.digits(6).format(new Quantity(value, written));
        assertThrows(QuantityException.class, () -> QuantityParser.parse(text, asked), text);
    }

    @Property(seed = "20261110", tries = 20)
    void whatIsNoFiniteNumberIsNeverPrinted(
            @ForAll("noNumbers") double value, @ForAll Unit unit, @ForAll @IntRange(min = 1, max = 17) int digits) {
        assertThrows(IllegalArgumentException.class, () -> new Quantity(value, unit));
        assertThrows(IllegalArgumentException.class, () -> QuantityFormat.digits(digits)
                .format(value));
        assertThrows(QuantityException.class, () -> QuantityParser.parse(Double.toString(value), unit));
    }

    @Property(seed = "20261107", tries = 300)
    void decibelsAndRatiosAreTwoWaysOfSayingOneThing(@ForAll("ratios") double ratio, @ForAll("ratios") double other) {
        assertEquals(ratio, Decibels.toPowerRatio(Decibels.ofPowerRatio(ratio)), 1e-12 * ratio);
        assertEquals(ratio, Decibels.toFieldRatio(Decibels.ofFieldRatio(ratio)), 1e-12 * ratio);
        double levelDb = Decibels.ofFieldRatio(ratio);
        assertEquals(levelDb, Decibels.ofPowerRatio(ratio * ratio), 1e-12 * Math.max(1, Math.abs(levelDb)));
        assertEquals(levelDb + Decibels.ofFieldRatio(other), Decibels.ofFieldRatio(ratio * other), 1e-10);
        if (ratio < other) {
            assertTrue(Decibels.ofPowerRatio(ratio) <= Decibels.ofPowerRatio(other));
            assertTrue(Decibels.toPowerRatio(-1 / ratio) <= Decibels.toPowerRatio(-1 / other));
        }
    }

    @Property(seed = "20261108", tries = 400)
    void statedValuesShareTheirLastDecimalPlace(
            @ForAll("moderate") double value, @ForAll("ratios") double uncertainty) {
        StatedValue stated = StatedValue.of(value, uncertainty);
        BigDecimal shown = new BigDecimal(stated.value());
        BigDecimal shownUncertainty = new BigDecimal(stated.uncertainty());
        BigDecimal given = BigDecimal.valueOf(uncertainty);
        BigDecimal step = BigDecimal.ONE.movePointRight(given.precision() - given.scale() - 2);
        BigDecimal halfStep = step.multiply(new BigDecimal("0.5"));
        assertTrue(shownUncertainty.subtract(given).abs().compareTo(halfStep) <= 0, stated.uncertainty());
        // Rounding up from 99.5 makes a step ten times as large the last place of both.
        BigDecimal valueStep = shownUncertainty.compareTo(step.multiply(BigDecimal.valueOf(100))) >= 0
                ? step.multiply(BigDecimal.TEN)
                : step;
        BigDecimal off = shown.subtract(BigDecimal.valueOf(value)).abs();
        assertTrue(off.compareTo(valueStep.multiply(new BigDecimal("0.5"))) <= 0, stated.value());
        assertEquals(0, shown.remainder(valueStep).signum(), stated.value());
        assertEquals(0, shownUncertainty.remainder(valueStep).signum(), stated.uncertainty());
    }

    @Provide
    Arbitrary<Double> values() {
        Arbitrary<Double> everyday = Combinators.combine(
                        Arbitraries.integers().between(-99999, 99999),
                        Arbitraries.integers().between(-16, 12))
                .as((digits, exponent) -> Double.parseDouble(digits + "e" + exponent));
        Arbitrary<Double> bits =
                Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite);
        Arbitrary<Double> extremes = Arbitraries.of(
                0.0, -0.0, Double.MIN_VALUE, Double.MIN_NORMAL, Double.MAX_VALUE, -Double.MAX_VALUE, 0.9999999999);
        return Arbitraries.oneOf(everyday, bits, extremes);
    }

    @Provide
    Arbitrary<Double> noNumbers() {
        return Arbitraries.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    }

    @Provide
    Arbitrary<Locale> locales() {
        return Arbitraries.of(Locale.ENGLISH, Locale.GERMAN, Locale.ROOT);
    }

    @Provide
    Arbitrary<String> decimals() {
        Arbitrary<String> sign = Arbitraries.of("", "-", "+");
        return Combinators.combine(sign, digitRuns(), Arbitraries.of("", "."), digitRuns())
                .as((before, whole, point, fraction) -> before + whole + (point.isEmpty() ? "" : point + fraction));
    }

    @Provide
    Arbitrary<String> exponents() {
        Arbitrary<String> some = Arbitraries.integers().between(-250, 250).map(number -> "e" + number);
        return Arbitraries.oneOf(Arbitraries.just(""), some);
    }

    @Provide
    Arbitrary<String> digitRuns() {
        return Arbitraries.strings().numeric().ofMinLength(1).ofMaxLength(18);
    }

    @Provide
    Arbitrary<String> prefixes() {
        return Arbitraries.of(PREFIX_EXPONENTS.keySet().stream().sorted().toList());
    }

    @Provide
    Arbitrary<String> codes() {
        return Arbitraries.of(CODE_EXPONENTS.keySet().stream().sorted().toList());
    }

    @Provide
    Arbitrary<Unit> prefixedUnits() {
        return Arbitraries.of(Unit.class).filter(Unit::takesPrefix);
    }

    @Provide
    Arbitrary<Double> ratios() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 99999),
                        Arbitraries.integers().between(-60, 60))
                .as((digits, exponent) -> Double.parseDouble(digits + "e" + exponent));
    }

    @Provide
    Arbitrary<Double> moderate() {
        return Combinators.combine(
                        Arbitraries.integers().between(-99999, 99999),
                        Arbitraries.integers().between(-20, 20))
                .as((digits, exponent) -> Double.parseDouble(digits + "e" + exponent));
    }

    @Provide
    Arbitrary<String> scribbles() {
        Arbitrary<String> pieces = Arbitraries.of(
                "0",
                "1",
                "47",
                "2",
                ".",
                ",",
                "e",
                "E",
                "+",
                "-",
                "R",
                "r",
                "L",
                "k",
                "K",
                "M",
                "G",
                "m",
                "u",
                "n",
                "p",
                "\u00b5",
                " ",
                "\u03a9",
                "ohm",
                "V",
                "A",
                "W",
                "Hz",
                "s",
                "%",
                "dB",
                "\u00b0C",
                "C",
                "NaN",
                "Infinity",
                "x",
                "\u0663",
                "999999999999");
        return pieces.list().ofMaxSize(7).map(list -> String.join("", list));
    }

    private static double printedAndRead(double value, Unit unit, int digits) throws QuantityException {
        return QuantityParser.parse(QuantityFormat.digits(digits).format(new Quantity(value, unit)), unit)
                .value();
    }
}
