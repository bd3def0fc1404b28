// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CanonicalJsonTest {
    private static JsonNode parse(String json) throws IOException {
        return new ObjectMapper().readTree(json);
    }

    // RFC 8785, appendix B: the bits of a double and its text.
    @ParameterizedTest
    @CsvSource({
        "0000000000000000, 0",
        "8000000000000000, 0",
        "0000000000000001, 5e-324",
        "8000000000000001, -5e-324",
        "7fefffffffffffff, 1.7976931348623157e+308",
        "ffefffffffffffff, -1.7976931348623157e+308",
        "4340000000000000, 9007199254740992",
        "c340000000000000, -9007199254740992",
        "4430000000000000, 295147905179352830000",
        "44b52d02c7e14af5, 9.999999999999997e+22",
        "44b52d02c7e14af6, 1e+23",
        "44b52d02c7e14af7, 1.0000000000000001e+23",
        "444b1ae4d6e2ef4e, 999999999999999700000",
        "444b1ae4d6e2ef4f, 999999999999999900000",
        "444b1ae4d6e2ef50, 1e+21",
        "3eb0c6f7a0b5ed8c, 9.999999999999997e-7",
        "3eb0c6f7a0b5ed8d, 0.000001",
        "41b3de4355555553, 333333333.3333332",
        "41b3de4355555554, 333333333.33333325",
        "41b3de4355555555, 333333333.3333333",
        "41b3de4355555556, 333333333.3333334",
        "41b3de4355555557, 333333333.33333343",
        "becbf647612f3696, -0.0000033333333333333333",
        "43143ff3c1cb0959, 1424953923781206.2",
    })
    void writesTheSampleNumbersOfTheStandard(String bits, String text) {
        double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
        assertEquals(text, CanonicalJson.write(JsonNodeFactory.instance.numberNode(value)));
    }

    // RFC 8785, appendix B: NaN and Infinity must be refused.
    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void refusesNumbersThatAreNotFinite(double value) {
        JsonNode node = JsonNodeFactory.instance.numberNode(value);
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.write(node));
    }

    // RFC 8785, section 3.2.3: the sample of sorted names, which differs from the order of code points in its last two.
    @Test
    void sortsNamesAsTheSampleOfTheStandard() throws IOException {
        String in = "{\"\\u20ac\":\"Euro Sign\",\"\\r"
                + "\":\"Carriage Return\",\"\\ufb33\":\"Hebrew Letter Dalet With"
                + " Dagesh\",\"1\":\"One\",\"\\ud83d\\ude00\":\"Emoji: Grinning"
                + " Face\",\"\\u0080\":\"Control\",\"\\u00f6\":\"Latin Small Letter O With Diaeresis\"}";
        assertEquals(
                "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
                        + "\"\u00f6\":\"Latin Small Letter O With Diaeresis\",\"\u20ac\":\"Euro Sign\","
                        + "\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
                CanonicalJson.write(parse(in)));
    }

    // RFC 8785, section 3.2.2: the sample of primitive values.
    @Test
    void writesTheSampleValuesOfTheStandard() throws IOException {
        String in = "{ \"numbers\": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],"
                + " \"string\": \"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\","
                + " \"literals\": [null, true, false] }";
        assertEquals(
                "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
                        + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
                CanonicalJson.write(parse(in)));
    }

    @Test
    void writesEmptyObjectsAndLists() throws IOException {
        assertEquals("{\"a\":[],\"b\":{}}", CanonicalJson.write(parse("{ \"b\" : { }, \"a\" : [ ] }")));
    }

    @Test
    void refusesHalfASurrogatePair() {
        JsonNode node = JsonNodeFactory.instance.textNode("a\ud83d");
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.write(node));
    }

    @Test
    void everyNumberReadsBackToTheSameDoubleAndIsNoLongerThanThePlatformsText() {
        Random random = new Random(8785);
        for (int round = 0; round < 100_000; round++) {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value)) {
                String text = CanonicalJson.write(JsonNodeFactory.instance.numberNode(value));
                assertEquals(value, Double.parseDouble(text), 0.0, text);
                assertTrue(digits(text) <= digits(Double.toString(value)), text);
            }
        }
    }

    private static long digits(String text) {
        String mantissa = text.split("[eE]")[0].replaceAll("[-.]", "");
        return mantissa.replaceAll("^0+", "").replaceAll("0+$", "").length();
    }

    @Test
    void textsComeBackAsTheyWere() throws ProjectFileException {
        Map<String, String> fields =
                new TreeMap<>(Map.of("who", "N. N.", "text", "a \"b\"\n\u20ac", "formatVersion", "1"));
        String json = CanonicalJson.writeTexts(fields);
        assertEquals("{\"formatVersion\":\"1\",\"text\":\"a \\\"b\\\"\\n\u20ac\",\"who\":\"N. N.\"}", json);
        assertEquals(fields, CanonicalJson.readTexts(json));
    }

    @Test
    void refusesFieldsThatAreNotTexts() {
        assertThrows(ProjectFileException.class, () -> CanonicalJson.readTexts("{\"who\":1}"));
        assertThrows(ProjectFileException.class, () -> CanonicalJson.readTexts("[]"));
        assertThrows(ProjectFileException.class, () -> CanonicalJson.readTexts("{\"who\":"));
    }
}
