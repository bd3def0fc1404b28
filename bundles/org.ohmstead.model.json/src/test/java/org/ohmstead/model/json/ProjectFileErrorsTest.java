// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProjectFileErrorsTest {
    @TempDir
    Path temporary;

    private Path file;
    private String good;

    @BeforeEach
    void writeAGoodFile() throws Exception {
        file = temporary.resolve("project.json");
        ProjectFile.write(file, Samples.project(), Optional.empty());
        good = Files.readString(file);
    }

    private ProjectFileException readWith(String from, String to) throws IOException {
        assertTrue(good.contains(from), from);
        int at = good.indexOf(from);
        Files.writeString(file, good.substring(0, at) + to + good.substring(at + from.length()));
        return assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
    }

    private int lineOf(String text) {
        return 1
                + (int) good.substring(0, good.indexOf(text))
                        .chars()
                        .filter(c -> c == '\n')
                        .count();
    }

    // RFC 8259, section 8.2: such a text cannot be relied on; UTF-8 (RFC 3629) has no form for it.
    @Test
    void refusesHalfASurrogatePairWhereItStands() throws Exception {
        String message = readWith("\"title\": \"", "\"title\": \"\\ud800").getMessage();
        assertTrue(message.startsWith("project.json, line " + lineOf("\"title\"") + ", column "), message);
        assertTrue(message.contains("$.title: the text holds half of a character"), message);
        for (String half : new String[] {"\\udc00", "\\ud800", "x\\ud800y"}) {
            String name =
                    readWith("\"title\": ", "\"" + half + "\": 1, \"title\": ").getMessage();
            assertTrue(name.contains("half of a character") || name.contains("surrogate"), name);
        }
    }

    @Test
    void saysFileLinePathFaultAndRemedyOfAWrongValue() throws Exception {
        int line = lineOf("\"ohms\": 3.98");
        assertEquals(
                "project.json, line " + line
                        + ", column 19, $.loads[0].branches[1].ohms: the value is \"four\", but a number is"
                        + " needed: resistance in ohms above 0, for example 4.02.",
                readWith("\"ohms\": 3.98", "\"ohms\": \"four\"").getMessage());
    }

    // What two values together break lies at their object or list, not in the line of the one that was changed.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"low\": 0.82|\"low\": 0.95|$.heat.amplifier.converterEfficiencyRatio.high|high is 0.9; it must be at"
                        + " least low, which is 0.95 (efficiency of the converter, 0 to 1; the most that it may be).",
                "\"high\": 0.9|\"high\": 1.9|$.heat.amplifier|converterEfficiencyRatio.high is 1.9; it must lie"
                        + " between 0.0 and 1.0.",
                "\"finCount\": 12|\"finCount\": 126|$.heat.amplifier.sinkSize.finThicknessMetres|finThicknessMetres is"
                        + " 0.002; 126 fins of it do not fit on lengthMetres, which is 0.25 (thickness of a fin above 0,"
                        + " for example 0.002).",
                "\"currentMarginRatio\": 0.15|\"currentMarginRatio\":"
                        + " 1|$.heat.pacing.currentMarginRatio|currentMarginRatio is 1.0; it must lie between 0.0 and 0.95"
                        + " (part of a current limit to leave free, for example 0.1).",
                "\"stepId\": \"s4\"|\"stepId\": \"s2\"|$.heat.pacing.rests|rests is holding the step \"s2\" twice."
            })
    void saysWhatIsWrongWithTheDataOfHeat(String from, String to, String path, String sentence) throws Exception {
        String message = readWith(from, to).getMessage();
        assertTrue(message.contains(", " + path + ": " + sentence), message);
    }

    // Each row: what is replaced in the good file, by what, the path that must be named, and what the message must say.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"powerWatts\": 260|\"powerWatts\": -260|$.amplifier.ratings[1].powerWatts|powerWatts is -260.0; it"
                        + " must be a finite number above 0 (rated power in watts above 0, for example 90).",
                "\"powerWatts\": 90|\"powerWatts\": null|$.amplifier.ratings[0].powerWatts|the value is null, but a"
                        + " number is needed: rated power in watts",
                "\"powerWatts\": 90,|``|$.amplifier.ratings[0].powerWatts|the field is missing; it needs a number:"
                        + " rated power in watts above 0",
                "\"id\": \"4ohm\"|\"id\": \" \"|$.loads[0].id|load id is blank; it needs a text",
                "\"id\": \"m1\"|\"id\": 1|$.bench.meters[0].id|the value is 1, but a text in quotation marks is"
                        + " needed: a short name",
                "\"mode\": \"stereo\"|\"mode\": \"sterio\"|$.amplifier.lowestLoads[0].mode|the value is \"sterio\","
                        + " but one of \"stereo\", \"bridged\", \"single\" is needed",
                "\"kind\": \"toneBurst\"|\"kind\": \"burst\"|$.plan[1].stimulus.kind|one of \"continuousSine\","
                        + " \"toneBurst\" is needed: what is fed in.",
                "\"measure\": \"thdF\"|\"measure\": \"thd\"|$.plan[0].endPoint.measure|one of \"thdF\", \"thdR\","
                        + " \"thdPlusNoiseR\" is needed",
                "\"periodSeconds\": 0.5|\"periodSeconds\": 0.01|$.plan[1].stimulus.periodSeconds|it must be above"
                        + " onSeconds, which is 0.02",
                "\"highestVolts\": 16|\"highestVolts\": 9|$.bench.supply.highestVolts|it must be above lowestVolts,"
                        + " which is 10.0",
                "\"calibratedOn\": \"2025-06-01\"|\"calibratedOn\": \"1.6.2025\"|$.bench.meters[0].calibratedOn|a day"
                        + " as \"year-month-day\" is needed: day of the last calibration, for example \"2026-03-02\".",
                "\"channelCount\": 2|\"channelCount\": 2.5|$.amplifier.channelCount|the value is 2.5, but a whole"
                        + " number is needed: number of channels, 1 to 16.",
                "\"channelCount\": 2|\"channelCount\": 17|$.amplifier.channelCount|channelCount is 17.0; it must lie"
                        + " between 1.0 and 16.0",
                "\"belowLowestLoadConfirmed\": true|\"belowLowestLoadConfirmed\":"
                        + " \"yes\"|$.plan[1].belowLowestLoadConfirmed|true or false without quotation marks is needed",
                "\"notes\": \"No notes.\"|\"notes\": [1]|$.amplifier.notes|the value is a list, but a text in"
                        + " quotation marks is needed",
                "\"confidence\": 0.95|\"confidence\": 95|$.sheet.confidence|confidence is 95.0; it must lie between"
                        + " 0.5 and 0.9999",
                "\"powerLimitWatts\": 300|\"powerLimitWatts\": 1e999|$.loads[0].powerLimitWatts|the number 1e999 is"
                        + " too large or too close to 0",
                "\"powerLimitWatts\": 300|\"powerLimitWatts\": 1e-999|$.loads[0].powerLimitWatts|too large or too"
                        + " close to 0",
                "\"powerLimitWatts\": 300|\"powerLimitWatts\": 1e99999999999|$.loads[0].powerLimitWatts|too large or"
                        + " too close to 0",
                "\"title\":|\"title\": \"X\", \"title\":|$.title|the field \"title\" stands twice in this object. Keep"
                        + " one of the two.",
                "\"formatVersion\": 1,|``|$.formatVersion|the field \"formatVersion\" is missing",
                "\"formatVersion\": 1|\"formatVersion\": \"1\"|$.formatVersion|the value is \"1\", but a whole number"
                        + " of at least 1 is needed",
                "\"formatVersion\": 1|\"formatVersion\": 0|$.formatVersion|a whole number of at least 1 is needed",
            })
    void namesThePlaceAndWhatWouldBeRight(String from, String to, String path, String sentence) throws Exception {
        ProjectFileException failure = readWith(from, to);
        assertEquals(path, failure.jsonPath());
        assertTrue(failure.getMessage().contains(sentence), failure.getMessage());
        boolean missing = to.isEmpty();
        int expectedLine = missing ? failure.line().getAsInt() : lineOf(from);
        assertEquals(expectedLine, failure.line().getAsInt(), failure.getMessage());
        assertTrue(
                failure.getMessage()
                        .startsWith(String.format(
                                Locale.ROOT,
                                "project.json, line %d, column %d, %s: ",
                                expectedLine,
                                failure.column().getAsInt(),
                                path)),
                failure.getMessage());
    }

    @Test
    void aMissingFieldIsPlacedAtItsObject() throws Exception {
        int lineOfRatings = lineOf("\"ratings\": [");
        ProjectFileException failure = readWith("\"powerWatts\": 90,", "");
        assertEquals(lineOfRatings + 1, failure.line().getAsInt());
    }

    // Each row: what is replaced, by what, how many lines below the change the fault shows, and what the message must
    // say.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"channelCount\": 2,|\"channelCount\": 2|1|was expecting comma to separate Object entries",
                "\"channelCount\": 2|channelCount: 2|0|was expecting double-quote to start field name",
                "\"channelCount\": 2|\"channelCount\": 2,5|0|was expecting double-quote to start field name",
                "\"channelCount\": 2|\"channelCount\" = 2|0|was expecting a colon to separate field name and value",
                "\"channelCount\": 2|\"channelCount\": NaN|0|NaN",
            })
    void brokenSyntaxNamesTheLineAndWhatWasExpected(String from, String to, int below, String sentence)
            throws Exception {
        ProjectFileException failure = readWith(from, to);
        assertEquals(lineOf(from) + below, failure.line().getAsInt(), failure.getMessage());
        assertTrue(failure.getMessage().contains("this is not valid JSON: "), failure.getMessage());
        assertTrue(failure.getMessage().contains(sentence), failure.getMessage());
        assertTrue(failure.getMessage().endsWith("Check commas, quotation marks and brackets here and just before."));
    }

    @Test
    void everyTruncationIsAFaultInSentences() throws Exception {
        for (int length = 0; length < good.length() - 2; length += 13) {
            Files.writeString(file, good.substring(0, length));
            ProjectFileException failure =
                    assertThrows(ProjectFileException.class, () -> ProjectFile.read(file), "length " + length);
            assertTrue(failure.getMessage().endsWith("."), failure.getMessage());
        }
    }

    @Test
    void endsTooEarlySaysSo() throws Exception {
        int plan = good.indexOf("\"plan\"");
        int comma = good.indexOf(",\n", plan);
        int open = good.indexOf("{\n", plan);
        // Within a line, before and after the comma of an entry, and after what opens an object.
        for (int length : new int[] {comma - 1, comma, comma + 1, comma + 4, open, open + 1}) {
            Files.writeString(file, good.substring(0, length));
            ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
            assertTrue(failure.getMessage().contains("the file ends too early"), failure.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "[1, 2]|the file holds a list, but an object is needed",
                "12|the file holds 12, but an object is needed",
                "{} {}|there is more text after the end of the JSON object",
                "{\"formatVersion\": 1}|the field is missing; it needs a text: what the project is called.",
            })
    void otherContentIsRefused(String content, String sentence) throws Exception {
        Files.writeString(file, content);
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
        assertTrue(failure.getMessage().contains(sentence), failure.getMessage());
    }

    @Test
    void tooDeepNestingIsRefused() throws Exception {
        Files.writeString(file, "{\"formatVersion\": 1, \"x\": " + "[".repeat(100_000));
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
        assertTrue(
                failure.getMessage().contains("at most 64 objects and lists inside one another"), failure.getMessage());
    }

    @Test
    void bytesThatAreNotUtf8AreRefusedWithTheirPlace() throws Exception {
        Files.write(file, good.getBytes(StandardCharsets.ISO_8859_1));
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
        assertEquals(lineOf("\u00d7"), failure.line().getAsInt());
        assertTrue(failure.getMessage().contains("Save the file as UTF-8"), failure.getMessage());
    }
}
