// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;

class TextTableTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final Console console = new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(new ByteArrayOutputStream()));

    @Test
    void putsNumbersAtTheRightAndTextsAtTheLeft() {
        TextTable table = new TextTable("load", ">power W");
        table.row("4 \u03a9", "97.3");
        table.row("bridged", "333.7");
        table.print(console);
        assertEquals(
                List.of("load     power W", "-------  -------", "4 \u03a9         97.3", "bridged    333.7"),
                out.toString(StandardCharsets.UTF_8).lines().toList());
    }

    @Test
    void aRowHasACellForEachColumn() {
        TextTable table = new TextTable("a", "b");
        assertThrows(IllegalArgumentException.class, () -> table.row("only one"));
    }

    @ParameterizedTest
    @CsvSource({"13.80, 13.8", "14.4, 14.4", "100, 100", "0.5, 0.5", "1000000, 1.00000e+06", "12, 12"})
    void labelsHaveNoNeedlessZeros(double value, String expected) {
        assertEquals(expected, Texts.number(value));
    }

    @Test
    void endPointsReadAsPeopleSayThem() {
        assertEquals("1 % THD_F", Texts.endPoint(new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F)));
        assertEquals(
                "10 % THD+N", Texts.endPoint(new EndPoint.DistortionLimit(0.1, DistortionMeasure.THD_PLUS_NOISE_R)));
        assertEquals("-3 dB drive", Texts.endPoint(new EndPoint.FixedLevel(-3)));
        assertEquals("clipping onset", Texts.endPoint(new EndPoint.ClippingOnset()));
    }
}
