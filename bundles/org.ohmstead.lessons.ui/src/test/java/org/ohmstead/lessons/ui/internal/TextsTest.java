// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextsTest {
    @ParameterizedTest
    @CsvSource({
        "to 43.0 \u00b0C on average, to 43.0_\u00b0C on average",
        "from 50 W to 68.1 W, from 50_W to 68.1_W",
        "20 ms in every 500 ms, 20_ms in every 500_ms",
        "0.80 K/W, 0.80_K/W",
        "2 volts and 3 mice, 2 volts and 3 mice",
        "3 dB more, 3_dB more",
        "5 % of it, 5_% of it",
        "R & D, R && D"
    })
    void aNumberStaysWithItsUnit(String words, String shown) {
        assertEquals(shown.replace('_', '\u00a0'), Texts.plain(words));
    }
}
