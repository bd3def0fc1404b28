// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Specimen;

class WordsTest {
    @ParameterizedTest
    @CsvSource({
        "10.0099734, 0.00997, 10.0100",
        "10, 0.00997, 10.0000",
        "1234.56, 120, 1235",
        "-3.0149, 0.05, -3.015",
        "5, 0, 5",
        "12345678, 1, 1.235e+07"
    })
    void showsTwoDigitsOfTheScale(double value, double scale, String text) {
        assertEquals(text, Words.to(value, scale));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "100, 100", "0.00012345, 0.00012345", "123456, 123460", "0.0000001, 1.000e-07", "2.50, 2.5"})
    void showsFiveDigitsWithoutNeedlessZeros(double value, String text) {
        assertEquals(text, Words.number(value));
    }

    @Test
    void namesEndPointsAndSpecimens() {
        assertEquals(
                "10 % THD+N", Words.endPoint(new EndPoint.DistortionLimit(0.1, DistortionMeasure.THD_PLUS_NOISE_R)));
        assertEquals("clipping onset", Words.endPoint(new EndPoint.ClippingOnset()));
        assertEquals("-3 dB drive", Words.endPoint(new EndPoint.FixedLevel(-3)));
        assertEquals("Larkspur no. 7", Words.specimen(new Specimen("Larkspur", "7", "")));
        assertEquals("Larkspur", Words.specimen(new Specimen("Larkspur", "", "")));
        assertEquals("0.099 W", Words.uncertainty(0.0991, "W"));
        assertEquals("-4.2 %", Words.signedPercent(-0.042));
    }
}
