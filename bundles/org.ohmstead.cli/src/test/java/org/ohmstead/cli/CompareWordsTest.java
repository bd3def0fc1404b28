// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Price;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.TestLog;

/** The words that look back: comparison and trend. */
class CompareWordsTest {
    private static final List<String> STEPS = List.of("stereo-4ohm-12V5", "stereo-4ohm-14V4");

    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void measure() throws Exception {
        project = BenchWords.project(folder);
        Path recordings = BenchWords.recordings(folder, STEPS);
        BenchWords run = run("run", project.toString(), "--replay", recordings.toString());
        assertEquals(0, run.exitCode(), run.err());
    }

    private BenchWords run(String... words) {
        return BenchWords.run(new BuiltPlugins(), words);
    }

    /** Returns a copy of the project whose amplifier is another specimen that cost so much. */
    private Path another(String name, String serialNumber, Price price) throws Exception {
        Path copy = Files.createDirectories(folder.resolve(name + ".ohmstead"));
        LoadedProject loaded = ProjectFile.read(project);
        Amplifier amplifier =
                loaded.project().amplifier().withSerialNumber(serialNumber).withPrice(Optional.of(price));
        ProjectFile.write(copy, loaded.project().withAmplifier(amplifier), Optional.empty());
        BenchWords replay = run(
                "run", copy.toString(), "--replay", folder.resolve("recordings").toString());
        assertEquals(0, replay.exitCode(), replay.err());
        return copy;
    }

    private double weakest(String stepId) throws Exception {
        try (TestLog log = TestLog.openReadOnly(project.resolve(TestLog.FILE_NAME))) {
            Reading reading = log.readings().stream()
                    .flatMap(entry -> entry.reading().stream())
                    .filter(each -> each.stepId().equals(stepId))
                    .findFirst()
                    .orElseThrow();
            ChannelReading channel = reading.weakestChannel();
            return channel.powerWatts() * channel.loadOhms() / reading.nominalLoadOhms();
        }
    }

    @Test
    void twoSpecimensThatGiveTheSameDoNotDiffer() throws Exception {
        Path other = another("twin", "0002", new Price(240, "EUR", LocalDate.of(2020, 5, 1)));
        BenchWords compared =
                run("compare", project.toString(), other.toString(), "--at", "13.5V", "--load", "4ohm", "--json");
        assertEquals(0, compared.exitCode(), compared.err());
        JsonNode document = compared.json();
        assertEquals(2, document.get("powers").size());
        double watts = document.at("/powers/0/powerWatts").asDouble();
        assertTrue(watts > weakest(STEPS.get(0)) && watts < weakest(STEPS.get(1)), document.toString());
        assertEquals("curve", document.at("/powers/0/origin").asText());
        JsonNode difference = document.at("/differences/0");
        assertEquals(0, difference.get("differenceWatts").asDouble(), 1e-9);
        assertFalse(difference.get("significant").asBoolean());
        // The same recordings on the same bench: what the meters make uncertain cancels, each curve's own does not.
        assertTrue(difference.get("sharesInstruments").asBoolean());
        assertTrue(
                difference.get("standardUncertaintyWatts").asDouble()
                        < document.at("/powers/0/standardUncertaintyWatts").asDouble(),
                document.toString());
        BenchWords text = run("compare", project.toString(), other.toString(), "--at", "13.5", "--load", "4");
        assertTrue(text.out().contains("A difference cannot be shown."), text.out());
    }

    @Test
    void pricesAreBroughtToOneMoney() throws Exception {
        Path other = another("twin", "0002", new Price(240, "EUR", LocalDate.of(2020, 5, 1)));
        Path table = folder.resolve("index.csv");
        Files.writeString(table, "period,index\n2020,80\n2026,100\n");
        BenchWords compared = run(
                "compare",
                other.toString(),
                "--at",
                "14",
                "--load",
                "4",
                "--index-table",
                table.toString(),
                "--base",
                "2026",
                "--json");
        assertEquals(0, compared.exitCode(), compared.err());
        JsonNode price = compared.json().at("/powers/0/price");
        double watts = compared.json().at("/powers/0/powerWatts").asDouble();
        int outputs = price.get("outputs").asInt();
        assertEquals(240 / (outputs * watts), price.get("pricePerWatt").asDouble(), 1e-12);
        // Closed form: 100/80 = 1.25.
        assertEquals(1.25 * 240, price.at("/adjusted/amount").asDouble(), 1e-9);
        assertEquals(
                1.25 * price.get("pricePerWatt").asDouble(),
                price.at("/adjusted/pricePerWatt").asDouble(),
                1e-12);
        Files.writeString(table, "period,index\n2019,80\n2026,100\n");
        BenchWords gap = run(
                "compare",
                other.toString(),
                "--at",
                "14",
                "--load",
                "4",
                "--index-table",
                table.toString(),
                "--base",
                "2026");
        assertEquals(3, gap.exitCode());
        assertTrue(gap.err().contains("has no value for 2020"), gap.err());
        assertEquals(
                2,
                run("compare", other.toString(), "--at", "14", "--load", "4", "--base", "2026")
                        .exitCode());
    }

    @Test
    void whatWouldBeAGuessIsRefused() {
        BenchWords beyond = run("compare", project.toString(), "--at", "16", "--load", "4");
        assertEquals(1, beyond.exitCode(), beyond.err());
        assertTrue(beyond.out().contains("would be a guess"), beyond.out());
        BenchWords bridged = run("compare", project.toString(), "--at", "13", "--load", "4", "--mode", "bridged");
        assertEquals(1, bridged.exitCode());
        assertTrue(bridged.out().contains("no reading bridged into 4 ohm"), bridged.out());
        BenchWords never = run("compare", project.toString(), "--at", "13", "--load", "4", "--period", "1999");
        assertEquals(3, never.exitCode());
        assertTrue(never.err().contains("no valid reading of 1999"), never.err());
        for (String[] wrong : new String[][] {
            {"--at", "0", "--load", "4"},
            {"--at", "13", "--load", "x"},
            {"--at", "13", "--load", "4", "--period", "soon"},
            {"--at", "13", "--load", "4", "--distortion", "0"},
            {"--at", "13", "--load", "4", "--confidence", "100"}
        }) {
            String[] words = new String[wrong.length + 2];
            words[0] = "compare";
            words[1] = project.toString();
            System.arraycopy(wrong, 0, words, 2, wrong.length);
            assertEquals(3, run(words).exitCode(), String.join(" ", wrong));
        }
    }

    @Test
    void aTrendNamesItsStepAndItsValues() throws Exception {
        BenchWords trend = run("log", "trend", project.toString(), "power", "--channel", "A", "--json");
        assertEquals(0, trend.exitCode(), trend.err());
        JsonNode trends = trend.json().get("trends");
        assertEquals(2, trends.size());
        assertEquals(STEPS.get(0), trends.at("/0/step").asText());
        assertEquals(1, trends.at("/0/points").size());
        assertEquals(
                "There is 1 value; a trend needs at least three of different times.",
                trends.at("/0/sentence").asText());
        BenchWords text = run("log", "trend", project.toString(), "thd", "--step", STEPS.get(1));
        assertTrue(text.out().contains("thd %") && text.out().contains(STEPS.get(1)), text.out());
        assertEquals(3, run("log", "trend", project.toString(), "noise").exitCode());
    }
}
