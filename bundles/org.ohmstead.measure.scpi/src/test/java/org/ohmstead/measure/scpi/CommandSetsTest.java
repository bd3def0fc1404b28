// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.MeasurementException;

class CommandSetsTest {
    private static final String METER =
            """
            # A remark.
            name = Meter of bench 2
            role = multimeter
            identity = M-7

            [start]
            SYSTem:REMote
            [measure volts]
            CONFigure:VOLTage:DC
            *OPC? -> ready
            READ? -> number 2 of list times 1E-3
            """;

    /** Nodes of the command tree of SCPI 1999, volume 2, in their long forms, and the channel names of TRACe. */
    private static final Set<String> STANDARD = Set.of(
            "SOURce",
            "VOLTage",
            "CURRent",
            "LEVel",
            "IMMediate",
            "AMPLitude",
            "OFFSet",
            "LIMit",
            "STATe",
            "FUNCtion",
            "MODE",
            "SHAPe",
            "FREQuency",
            "FIXed",
            "LIST",
            "DWELl",
            "COUNt",
            "PULM",
            "PULSe",
            "PERiod",
            "WIDTh",
            "OUTPut",
            "MEASure",
            "SCALar",
            "DC",
            "TEMPerature",
            "CONFigure",
            "READ",
            "INSTrument",
            "NSELect",
            "TRIGger",
            "SEQuence",
            "FORMat",
            "DATA",
            "BORDer",
            "SENSe",
            "RANGe",
            "UPPer",
            "PTPeak",
            "SWEep",
            "POINts",
            "TINTerval",
            "TIME",
            "INITiate",
            "TRACe",
            "*OPC");

    private static String refusal(String text) {
        MeasurementException refused =
                assertThrows(MeasurementException.class, () -> CommandSetReader.read("own", "own.commands", text));
        assertTrue(
                refused.getMessage().startsWith("The command set \"own.commands\" cannot be used. "),
                refused.getMessage());
        return refused.getMessage();
    }

    @Test
    void readsAWholeFile() throws Exception {
        CommandSet set = CommandSetReader.read("own", "own.commands", METER);
        assertEquals("Meter of bench 2", set.name());
        assertEquals(InstrumentRole.MULTIMETER, set.role());
        assertEquals("M-7", set.key("identity", ""));
        assertEquals(Set.of("start", "measure volts"), set.actions());
        assertEquals(
                List.of(
                        new CommandLine("CONFigure:VOLTage:DC", Optional.empty()),
                        new CommandLine("*OPC?", Optional.of(new AnswerShape.Ready())),
                        new CommandLine("READ?", Optional.of(new AnswerShape.Number(2, 1e-3)))),
                set.lines("measure volts"));
    }

    @Test
    void readsEachShapeOfSamples() throws Exception {
        for (String[] each : new String[][] {
            {"block int16 low first", "INT16", "LITTLE_ENDIAN"},
            {"block float32 high first", "FLOAT32", "BIG_ENDIAN"},
            {"block uint8", "UINT8", "BIG_ENDIAN"}
        }) {
            CommandSet set = CommandSetReader.read("s", "s", scope("WAV? -> " + each[0]));
            ByteOrder order = each[2].startsWith("B") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
            assertEquals(
                    new AnswerShape.Block(BlockFormat.valueOf(each[1]), order),
                    set.lines("fetch").get(0).answer().orElseThrow());
        }
    }

    private static String scope(String fetch) {
        return "name = S\n"
                + "role = oscilloscope\n"
                + "range = peak\n"
                + "[set range]\n"
                + "R {volts}\n"
                + "[set time]\n"
                + "T {seconds}\n"
                + "[arm]\n"
                + "GO\n"
                + "[interval]\n"
                + "I? -> number\n"
                + "[scale]\n"
                + "S? ->"
                + " number\n"
                + "[fetch]\n" + fetch + "\n";
    }

    @Test
    void fillsPlaceholdersWithoutMindingDollarsAndBackslashes() {
        CommandLine line = new CommandLine("SOUR{channel}:VOLT {volts},{volts}", Optional.empty());
        assertEquals("SOUR$1\\:VOLT 14.4,14.4", line.filled(Map.of("channel", "$1\\", "volts", "14.4")));
        assertEquals(Set.of("channel", "volts"), line.placeholders());
        assertTrue(new CommandLine("A {1}", Optional.empty()).hasLooseBraces());
        assertFalse(line.hasLooseBraces());
    }

    // What is replaced, by what, the line that must be named, and words of what would be right there.
    @ParameterizedTest
    @ValueSource(
            strings = {
                "role = multimeter|role = meter|Line 3|one of supply, multimeter, generator, oscilloscope",
                "role = multimeter||Line 1|\"role = \" and one of supply",
                "name = Meter of bench 2|name =|Line 2|is empty",
                "identity = M-7|colour = red|Line 4|there are name, role, identity, errors",
                "identity = M-7|identity|Line 4|is like \"role = supply\"",
                "identity = M-7|role = supply|Line 4|say it once",
                "identity = M-7|errors = SYST:ERR|Line 4|write none, or one such as SYSTem:ERRor?",
                "[start]|[begin]|Line 6|it has [start], [measure volts]",
                "[start]|[start|Line 6|lacks the ]",
                "[start]|[measure volts]|Line 8|is in line 6 already",
                "SYSTem:REMote|SYSTem:REMote?|Line 7|write -> and what it gives",
                "SYSTem:REMote|SYSTem:REMote -> number|Line 7|leave out the -> or add the ?",
                "SYSTem:REMote|READ? -> number|Line 6|[start] gives nothing",
                "SYSTem:REMote|VOLT 5;VOLT?|Line 7|give each query a line of its own",
                "READ? -> number|READ?;READ? -> number|Line 11|give each query a line of its own",
                "identity = M-7|amplitude = rms|Line 1|means nothing for a multimeter",
                "SYSTem:REMote|VOLT {volts}|Line 7|nothing to put in place of {volts}; here are {channel}",
                "SYSTem:REMote|VOLT {channel|Line 7|belongs to nothing",
                "SYSTem:REMote|VOLT \u00b5|Line 7|printable ASCII",
                "number 2 of list times 1E-3|figure|Line 11|is no shape of an answer; write number, number times 0.001",
                "number 2 of list times 1E-3|number times x|Line 11|such as 0.001",
                "number 2 of list times 1E-3|number times 0|Line 11|other than 0",
                "number 2 of list times 1E-3|block int12 high first|Line 11|int8, uint8, int16",
                "number 2 of list times 1E-3|block int16|Line 11|block int16 high first or block int16 low first",
                "READ? -> number 2 of list times 1E-3|*OPC? -> ready|Line 8|needs one query with -> number",
                "[measure volts]|[start two]|Line 8|it has [start]"
            })
    void namesTheLineAndWhatWouldBeRight(String given) {
        String[] cut = given.split("\\|");
        assertTrue(METER.contains(cut[0]));
        String message = refusal(METER.replaceFirst(Pattern.quote(cut[0]), Matcher.quoteReplacement(cut[1])));
        assertTrue(message.contains(cut[2] + " of \"own.commands\": "), message);
        assertTrue(message.contains(cut[3]), message);
    }

    @Test
    void namesWhatARoleNeeds() {
        assertTrue(refusal("name = a\nrole = supply\n[output on]\nOUTP ON\n").contains("[set volts] is missing"));
        assertTrue(refusal("name = a\nrole = multimeter\n").contains("It measures nothing"));
        assertTrue(refusal("name = a\nrole = generator\n").contains("amplitude = rms, peak or peak-to-peak"));
        assertTrue(refusal("name = a\nrole = oscilloscope\n").contains("range = peak or peak-to-peak"));
        String supply = "name = a\n"
                + "role = supply\n"
                + "[set volts]\n"
                + "VOLT 14\n"
                + "[set current limit]\n"
                + "CURR {amps}\n"
                + "[output on]\n"
                + "OUTP ON\n"
                + "[output off]\n";
        String message = refusal(supply);
        assertTrue(message.contains("Line 3 of \"own.commands\": [set volts] has no {volts}"), message);
        assertTrue(message.contains("Line 9 of \"own.commands\": [output off] is empty"), message);
        String counts = scope("WAV? -> block int16 low first").replace("[scale]\nS? -> number\n", "");
        assertTrue(refusal(counts).contains("[scale] is missing"));
        assertTrue(refusal(scope("WAV? -> list").replace("GO", "GO? -> ready")).contains("[arm] must not ask"));
    }

    @Test
    void tellsOfManyFaultsAtOnceButNotOfAll() {
        String message = refusal("x\n".repeat(50));
        assertTrue(message.contains("Line 1 of") && message.contains("Line 8 of"), message);
        assertFalse(message.contains("Line 9 of"), message);
    }

    @Test
    void anyTextIsReadOrRefusedButNeverAnythingElse() {
        Random random = new Random(99);
        String[] pieces = {
            "name = a\n",
            "role = supply\n",
            "role = generator\n",
            "[set volts]\n",
            "[output on]\n",
            "VOLT {volts}\n",
            "{",
            "}",
            "->",
            " number",
            "?",
            "block int16",
            " times ",
            "1E-3",
            "\n",
            "[",
            "]",
            "=",
            "#",
            "\u00e9",
            "\r\n",
            "list"
        };
        int refused = 0;
        for (int i = 0; i < 2000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(30); length > 0; length--) {
                text.append(pieces[random.nextInt(pieces.length)]);
            }
            try {
                CommandSetReader.read("x", "x", text.toString());
            } catch (MeasurementException told) {
                refused++;
                assertTrue(told.getMessage().contains("Line "), told.getMessage());
            }
        }
        assertTrue(refused > 1900);
    }

    @Test
    void everyShippedSetIsReadForItsRole() throws Exception {
        CommandSets sets = CommandSets.shipped();
        Map<InstrumentRole, Long> count =
                sets.ids().stream().collect(Collectors.groupingBy(CommandSetsTest::role, Collectors.counting()));
        for (String id : sets.ids()) {
            assertEquals(id, sets.get(id, role(id)).id());
        }
        for (InstrumentRole role : InstrumentRole.values()) {
            assertEquals(3, count.get(role), role.word());
        }
    }

    private static InstrumentRole role(String id) {
        return InstrumentRole.of(id.split("-")[0]).orElseThrow();
    }

    @Test
    void shippedSetsUseNoHeadersButThoseOfTheStandard() throws Exception {
        Set<String> used = new TreeSet<>();
        for (String id : CommandSets.shipped().ids()) {
            CommandSet set = CommandSets.shipped().get(id, role(id));
            for (String action : set.actions()) {
                for (CommandLine line : set.lines(action)) {
                    String header = line.text().split(" ")[0].replace("?", "").replace("{channel}", "");
                    used.addAll(List.of(header.split(":")));
                }
            }
        }
        used.removeAll(STANDARD);
        assertEquals(Set.of(), used);
    }

    @Test
    void aFolderAddsSetsAndTakesThePlaceOfOurs(@TempDir Path folder) throws Exception {
        Files.writeString(folder.resolve("own.commands"), "\uFEFF" + METER);
        Files.writeString(folder.resolve("multimeter.commands"), METER.replace("bench 2", "bench 3"));
        Files.writeString(folder.resolve("notes.txt"), "nothing");
        CommandSets sets = CommandSets.of(folder);
        assertTrue(sets.ids().containsAll(List.of("own", "multimeter", "supply")));
        assertFalse(sets.ids().contains("notes"));
        assertEquals(
                "Meter of bench 2", sets.get("own", InstrumentRole.MULTIMETER).name());
        assertEquals(
                "Meter of bench 3",
                sets.get("multimeter", InstrumentRole.MULTIMETER).name());
    }

    @Test
    void refusesWhatIsNoCommandSet(@TempDir Path folder) throws Exception {
        Files.write(folder.resolve("latin.commands"), "name = \u00e9".getBytes(StandardCharsets.ISO_8859_1));
        Files.write(folder.resolve("huge.commands"), new byte[300_000]);
        CommandSets sets = CommandSets.of(folder);
        assertSays(sets, "latin", "Save it as UTF-8");
        assertSays(sets, "huge", "larger than");
        assertSays(sets, "none", "There is no command set \"none\". Choose one of generator");
        assertSays(sets, "../supply", "There is no command set");
        assertSays(sets, "supply", "is for a supply, not for a multimeter");
        MeasurementException missing =
                assertThrows(MeasurementException.class, () -> CommandSets.of(folder.resolve("nowhere")));
        assertTrue(missing.getMessage().contains("nowhere"));
    }

    private static void assertSays(CommandSets sets, String id, String words) {
        MeasurementException refused =
                assertThrows(MeasurementException.class, () -> sets.get(id, InstrumentRole.MULTIMETER));
        assertTrue(refused.getMessage().contains(words), refused.getMessage());
    }
}
