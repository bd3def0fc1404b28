// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AnswerTest {
    // NR1, NR2 and NR3 as IEEE 488.2, 8.7.2 to 8.7.4 draw them; the values are what the digits say.
    @ParameterizedTest
    @CsvSource({
        "12, 12",
        "-7, -7",
        "+0042, 42",
        "1.25, 1.25",
        "-.5, -0.5",
        "3., 3",
        "1.44E+1, 14.4",
        "1.44E1, 14.4",
        "-2.5e-03, -0.0025",
        "' 7.5 ', 7.5"
    })
    void readsTheThreeKindsOfNumbers(String text, double expected) throws Exception {
        assertEquals(expected, Answer.number(text), 0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                ".",
                "+",
                "1e",
                "1,2",
                "0x12",
                "NaN",
                "Infinity",
                "1.5V",
                "1 2",
                "--1",
                "1d",
                "1f",
                "\"1\"",
                "1E123456"
            })
    void refusesWhatIsNoNumber(String text) {
        AnswerFault fault = assertThrows(AnswerFault.class, () -> Answer.number(text));
        assertTrue(fault.getMessage().contains("where a number"), fault.getMessage());
    }

    // SCPI 1999, volume 1, 7.2.1.4 and 7.2.1.5: infinity is 9.9E37, negative infinity -9.9E37, not a number 9.91E37.
    @ParameterizedTest
    @CsvSource({
        "9.9E37, overloaded",
        "-9.9E37, overloaded",
        "9.90000000E+37, overloaded",
        "1E300, overloaded",
        "1E400, overloaded",
        "9.91E37, no valid reading",
        "9.910000E+37, no valid reading"
    })
    void knowsTheNumbersThatStandForSomethingElse(String text, String words) {
        AnswerFault fault = assertThrows(AnswerFault.class, () -> Answer.number(text));
        assertTrue(fault.getMessage().contains(words), fault.getMessage());
    }

    @Test
    void cutsListsOutsideOfQuotes() throws Exception {
        assertEquals(List.of("1", "\"a,b\"", "'c,\"'", ""), Answer.list("1, \"a,b\",'c,\"',"));
        assertEquals("say \"yes\"", Answer.string("\"say \"\"yes\"\"\""));
        assertEquals("it's", Answer.string("'it''s'"));
        assertEquals("bare", Answer.string(" bare "));
        assertEquals("", Answer.string("\"\""));
        assertThrows(AnswerFault.class, () -> Answer.list("1,\"open"));
        assertThrows(AnswerFault.class, () -> Answer.string("\"open"));
        assertThrows(AnswerFault.class, () -> Answer.string("\""));
        assertThrows(AnswerFault.class, () -> Answer.string("\"a\"b\""));
    }

    @Test
    void readsEntriesOfAnErrorQueue() throws Exception {
        // SCPI 1999, volume 2, SYSTem:ERRor: 0,"No error" when it is empty.
        assertTrue(Answer.error("0,\"No error\"").isEmpty());
        assertTrue(Answer.error("+0").isEmpty());
        assertEquals(
                new ScpiError(-113, "Undefined header;VLTG"),
                Answer.error("-113,\"Undefined header;VLTG\"").orElseThrow());
        assertThrows(AnswerFault.class, () -> Answer.error("no error"));
    }

    @Test
    void readsWhoItIsAndRefusesAnythingButFourFields() throws Exception {
        assertEquals(
                new ScpiIdentity("Made-up Workshop", "S-1", "0", "1.0"), Answer.identity("Made-up Workshop,S-1,0,1.0"));
        assertThrows(AnswerFault.class, () -> Answer.identity("hello"));
        assertThrows(AnswerFault.class, () -> Answer.identity("a,b,c"));
        assertThrows(AnswerFault.class, () -> Answer.identity("a,b,,d"));
    }

    @Test
    void readsBlocksOfEachFormatInBothOrders() throws Exception {
        // Two's complement and IEEE 754: -2 is FFFE, 1.5 is 3FC00000.
        byte[] high = {(byte) 0xff, (byte) 0xfe, 0x01, 0x00};
        assertEquals(List.of(-2.0, 256.0), list(BlockFormat.INT16.samples(high, ByteOrder.BIG_ENDIAN)));
        assertEquals(List.of(-257.0, 1.0), list(BlockFormat.INT16.samples(high, ByteOrder.LITTLE_ENDIAN)));
        assertEquals(List.of(65534.0, 256.0), list(BlockFormat.UINT16.samples(high, ByteOrder.BIG_ENDIAN)));
        assertEquals(List.of(-1.0, -2.0, 1.0, 0.0), list(BlockFormat.INT8.samples(high, ByteOrder.BIG_ENDIAN)));
        assertEquals(List.of(255.0, 254.0, 1.0, 0.0), list(BlockFormat.UINT8.samples(high, ByteOrder.BIG_ENDIAN)));
        byte[] one = {0x3f, (byte) 0xc0, 0, 0};
        assertEquals(List.of(1.5), list(BlockFormat.FLOAT32.samples(one, ByteOrder.BIG_ENDIAN)));
        assertEquals(List.of((double) 0x3fc00000), list(BlockFormat.INT32.samples(one, ByteOrder.BIG_ENDIAN)));
        byte[] eight = ByteBuffer.allocate(8).putDouble(0.1).array();
        assertEquals(List.of(0.1), list(BlockFormat.FLOAT64.samples(eight, ByteOrder.BIG_ENDIAN)));
        assertThrows(AnswerFault.class, () -> BlockFormat.INT16.samples(new byte[3], ByteOrder.BIG_ENDIAN));
        assertThrows(AnswerFault.class, () -> BlockFormat.INT16.samples(new byte[0], ByteOrder.BIG_ENDIAN));
        byte[] nan = ByteBuffer.allocate(4).putFloat(Float.NaN).array();
        assertThrows(AnswerFault.class, () -> BlockFormat.FLOAT32.samples(nan, ByteOrder.BIG_ENDIAN));
        byte[] over = ByteBuffer.allocate(4).putFloat(9.9e37f).array();
        assertThrows(AnswerFault.class, () -> BlockFormat.FLOAT32.samples(over, ByteOrder.BIG_ENDIAN));
    }

    @Test
    void anyTextIsReadOrRefusedButNeverAnythingElse() {
        Random random = new Random(20260101);
        String letters = "0123456789+-.eE,\"'# \t\u00b5AZ?;\u0000";
        for (int i = 0; i < 6_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(24); length > 0; length--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            String each = text.toString();
            refusesOnlyByFault(() -> assertTrue(Double.isFinite(Answer.number(each)), each));
            refusesOnlyByFault(() -> Answer.list(each));
            refusesOnlyByFault(() -> Answer.string(each));
            refusesOnlyByFault(() -> Answer.error(each));
            refusesOnlyByFault(() -> Answer.identity(each));
            refusesOnlyByFault(() -> Answer.numbers(each));
        }
    }

    @Test
    void everyNumberThatIsWrittenIsReadAgain() throws Exception {
        Random random = new Random(7);
        for (int i = 0; i < 5000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(60) - 30);
            assertEquals(value, Answer.number(String.format(Locale.ROOT, "%.17E", value)), 0);
            // Seven digits: half a unit of the seventh is at most 5e-7 of the number.
            assertEquals(value, Answer.number(Show.number(value)), Math.abs(value) * 5.0001e-7);
        }
    }

    private interface Reading {
        void read() throws AnswerFault;
    }

    private static void refusesOnlyByFault(Reading reading) {
        try {
            reading.read();
        } catch (AnswerFault fault) {
            assertTrue(!fault.getMessage().isBlank() && fault.remedy().endsWith("."));
        }
    }

    private static List<Double> list(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }
}
