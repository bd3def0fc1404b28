// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.Unit;

class MeasureFormTest {
    @ParameterizedTest
    @CsvSource({
        "4.7, 0.0047",
        "'4,7', 0.0047",
        "4.7 m\u03a9, 0.0047",
        "4R7, 4.7",
        "0.5 \u03a9, 0.5",
        "4L7, 0.0047",
        "1e1, 0.01"
    })
    void aBareNumberIsInTheShownUnitAndAWrittenUnitCounts(String text, double ohms) {
        assertEquals(ohms, Measure.milli(Unit.OHM).read(text));
    }

    @ParameterizedTest
    @CsvSource({"1 %, 0.01", "1, 0.01", "'0,7', 0.007", "7%, 0.07", "100, 1"})
    void ratiosAreWrittenInPercent(String text, double ratio) {
        assertEquals(ratio, Measure.percentOfOne().read(text));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0047, 0.07, 0.29, 1e-7, 123456.789, 0, -0.3, 1.0 / 3})
    void whatIsWrittenReadsAsExactlyTheSame(double value) {
        for (Measure measure : java.util.List.of(
                Measure.of(Unit.OHM),
                Measure.milli(Unit.OHM),
                Measure.micro(Unit.HENRY),
                Measure.kilo(Unit.HERTZ),
                Measure.percentOfOne(),
                Measure.named("mm\u00b2"))) {
            assertEquals(value, measure.read(measure.exact(value)), measure.symbol());
            assertEquals(value, measure.read(measure.exact(value) + " " + measure.symbol()), measure.symbol());
        }
    }

    @Test
    void namesAreMereNamesBehindANumber() {
        Measure area = Measure.named("mm\u00b2");
        assertEquals(21, area.read("21 mm\u00b2"));
        assertEquals("21 mm\u00b2", area.shownWithUnit(21));
        assertThrows(IllegalArgumentException.class, () -> area.read("21 V"));
    }

    @Test
    void roundsForTheEye() {
        assertEquals("8.66", Measure.of(Unit.AMPERE).rounded(8.6602540378, 4));
        assertEquals("4.743", Measure.milli(Unit.OHM).rounded(0.00474341649, 4));
        assertEquals("0.333333", Measure.of(Unit.OHM).shown(1.0 / 3));
    }

    @Test
    void daysAreYearMonthDay() {
        assertEquals(
                Optional.of(LocalDate.of(2026, 3, 2)), TextValue.optionalDate().read(" 2026-03-02 "));
        assertEquals(Optional.empty(), TextValue.optionalDate().read(" "));
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> TextValue.date().read("2026-02-30"));
        assertEquals(
                "\"2026-02-30\" is not a day; write year-month-day, for example 2026-03-02.", refused.getMessage());
    }

    @Test
    void optionalQuantitiesMayBeLeftEmpty() {
        TextValue<OptionalDouble> celsius = TextValue.optionalQuantity(Measure.of(Unit.CELSIUS));
        assertEquals(OptionalDouble.empty(), celsius.read("  "));
        assertEquals(OptionalDouble.of(25), celsius.read("25 \u00b0C"));
        assertEquals("", celsius.write(OptionalDouble.empty()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "9", "2.5", "", "two", "99999999999"})
    void wholeNumbersStayWithinTheirBounds(String text) {
        assertThrows(
                IllegalArgumentException.class, () -> TextValue.integer(1, 8).read(text));
        assertEquals(8, TextValue.integer(1, 8).read(" 8 "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "loadOhms is -4.0; it must be a finite number above 0 | It must be a number above 0.",
                "rating id is blank; it needs a text | It needs a text.",
                "kind is missing | It must not be missing.",
                "Another rating has this name. | Another rating has this name.",
                "\"x\" does not fit; write 3 | \"x\" does not fit; write 3.",
            })
    void refusalsSpeakToThePersonAtTheField(String message, String sentence) {
        assertEquals(sentence, Refusals.sentence(new IllegalArgumentException(message)));
    }
}
