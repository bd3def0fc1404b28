// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.LogEntry;

class RunWordTest {
    private static final String COLD = "stereo-8ohm-11V5";
    private static final String SECOND = "stereo-8ohm-12V5";
    private static final String HOT = "stereo-4ohm-14V4";
    private static final String POWER = "org.ohmstead.power-at-end-point";

    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void makeProject() throws IOException {
        project = BenchWords.project(folder);
    }

    private BenchWords run(String... options) {
        return run(new BuiltPlugins(), options);
    }

    private BenchWords run(BuiltPlugins plugins, String... options) {
        return BenchWords.run(plugins, words(options));
    }

    private String[] words(String... options) {
        String[] words = new String[options.length + 2];
        words[0] = "run";
        words[1] = project.toString();
        System.arraycopy(options, 0, words, 2, options.length);
        return words;
    }

    private List<LogEntry> log() throws Exception {
        return BenchWords.log(project);
    }

    @Test
    void oneDocumentHoldsEverythingAboutARun() throws Exception {
        BenchWords run = run("--driver", "simulated", "--step", HOT, "--yes", "--operator", "N. N.", "--json");
        assertEquals(0, run.exitCode(), run.err());
        JsonNode document = run.json();
        assertEquals("org.ohmstead.bench.simulated", document.at("/driver/id").asText());
        assertEquals("simulated", document.at("/driver/kind").asText());
        assertTrue(document.get("complete").asBoolean());
        assertTrue(document.get("seconds").asDouble() > 0);
        assertEquals(1, document.get("items").size());
        JsonNode item = document.at("/items/0");
        assertEquals(HOT, item.get("step").asText());
        assertEquals(POWER, item.get("measurement").asText());
        assertEquals("done", item.get("status").asText());
        assertEquals("finished", item.get("outcome").asText());
        assertTrue(item.get("sentence").asText().endsWith("."), item.toString());
        assertEquals(2, item.get("entryIds").size());
        JsonNode channel = item.at("/results/0/channels/0");
        assertTrue(channel.get("powerWatts").asDouble() > 50, channel.toString());
        assertTrue(channel.get("standardUncertaintyWatts").asDouble() > 0, channel.toString());
        JsonNode figure = item.at("/results/1/figures/0");
        assertEquals("W", figure.get("unit").asText());
        assertEquals(channel.get("powerWatts").asDouble(), figure.get("value").asDouble(), 1e-9);
        assertTrue(figure.get("standardUncertainty").asDouble() > 0, figure.toString());
        List<LogEntry> log = log();
        assertEquals(log.get(log.size() - 1).hash(), document.get("headHash").asText());
        assertEquals(log.size(), document.get("entries").asInt());
        assertEquals(RunOptions.USUAL_REASON, document.at("/confirmed/0/reason").asText());
        LogEntry yes = log.get(0);
        assertEquals("N. N.", yes.note().orElseThrow().who());
        assertTrue(yes.note().orElseThrow().text().contains(RunOptions.USUAL_REASON), yes.toString());
        Reading reading = log.get(log.size() - 2).reading().orElseThrow();
        assertEquals("N. N.", reading.provenance().operator());
        assertTrue(
                reading.notes().stream().anyMatch(note -> note.contains("simulated")),
                reading.notes().toString());
    }

    @Test
    void aDryRunShowsEverythingAndLeavesNoTrace() throws Exception {
        BenchWords dry = run("--dry-run", "--json");
        assertEquals(0, dry.exitCode(), dry.err());
        JsonNode document = dry.json();
        assertEquals(32, document.get("items").size());
        assertTrue(document.get("mayRun").asBoolean());
        JsonNode hot = item(document, HOT);
        assertTrue(hot.get("ready").asBoolean());
        boolean burns = false;
        for (JsonNode problem : hot.get("problems")) {
            burns |= problem.get("needsYes").asBoolean()
                    && problem.get("what").asText().contains("can burn")
                    && !problem.get("remedy").asText().isEmpty();
        }
        assertTrue(burns, hot.toString());
        assertTrue(hot.get("stopLimits").size() >= 3, hot.toString());
        for (JsonNode limit : hot.get("stopLimits")) {
            assertTrue(
                    limit.get("highest").asDouble() > 0
                            && !limit.get("unit").asText().isEmpty(),
                    limit.toString());
        }
        assertEquals(32, document.at("/forecast/steps").size());
        assertTrue(document.at("/forecast/cautions").size() > 0);
        assertEquals(List.of("project.json"), names());
        BenchWords text = run("--driver", "simulated", "--dry-run", "--step", HOT);
        assertTrue(text.out().contains("can burn"), text.out());
        assertTrue(text.out().contains("ends above 80"), text.out());
        assertTrue(text.out().contains("1 with warnings that need a yes"), text.out());
        assertTrue(text.out().contains("nearest to its limit"), text.out());
        assertEquals(List.of("project.json"), names());
    }

    private List<String> names() throws IOException {
        try (var files = Files.list(project)) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }

    private static JsonNode item(JsonNode document, String step) {
        for (JsonNode item : document.get("items")) {
            if (item.get("step").asText().equals(step)) {
                return item;
            }
        }
        throw new AssertionError("no item " + step);
    }

    @Test
    void whereNobodyCanBeAskedAWarningIsRefused() throws Exception {
        BenchWords run = run("--driver", "simulated", "--step", HOT + "," + COLD, "--json");
        assertEquals(1, run.exitCode(), run.err());
        assertTrue(run.err().contains("--yes"), run.err());
        assertTrue(run.err().contains("can burn"), run.err());
        assertTrue(run.err().contains("Nothing was begun"), run.err());
        assertEquals(1, run.json().get("refused").size());
        assertEquals("pending", run.json().at("/items/0/status").asText());
        assertEquals(List.of(), log());
        BenchWords passed = run("--driver", "simulated", "--step", HOT + "," + COLD, "--go-on", "--json");
        assertEquals(1, passed.exitCode(), passed.err());
        assertEquals("done", item(passed.json(), COLD).get("status").asText());
        assertEquals("refused", item(passed.json(), HOT).get("outcome").asText());
        assertEquals(
                1, log().stream().filter(entry -> entry.reading().isPresent()).count());
    }

    @Test
    void theSameCommandGoesOnBehindTheLastEntry() throws Exception {
        assertEquals(0, run("--driver", "simulated", "--step", COLD).exitCode());
        int before = log().size();
        BenchWords second = run("--driver", "simulated", "--step", COLD + "," + SECOND, "--json");
        assertEquals(0, second.exitCode(), second.err());
        JsonNode done = item(second.json(), COLD);
        assertEquals("done", done.get("status").asText());
        assertFalse(done.get("triedNow").asBoolean());
        assertEquals(2, done.get("results").size());
        assertTrue(item(second.json(), SECOND).get("triedNow").asBoolean());
        assertEquals(before + 2, log().size());
        BenchWords third = run("--driver", "simulated", "--step", COLD + "," + SECOND);
        assertEquals(0, third.exitCode(), third.err());
        assertTrue(third.out().contains("2 of 2 are in the log; 0 measured now"), third.out());
        assertTrue(third.out().contains("--again"), third.out());
        assertEquals(before + 2, log().size());
        BenchWords again = run("--driver", "simulated", "--step", COLD, "--again", "--json");
        assertEquals(0, again.exitCode(), again.err());
        assertEquals(4, again.json().at("/items/0/entryIds").size());
        assertEquals(before + 4, log().size());
    }

    @Test
    void whatIsDoneAgainNeedsItsYesAgain() throws Exception {
        assertEquals(0, run("--driver", "simulated", "--step", HOT, "--yes").exitCode());
        int before = log().size();
        BenchWords refused = run("--driver", "simulated", "--step", HOT, "--again");
        assertEquals(1, refused.exitCode(), refused.err());
        assertEquals(before, log().size());
        assertEquals(
                0,
                run("--driver", "simulated", "--step", HOT, "--again", "--yes").exitCode());
    }

    @Test
    void aStepThatFailsEndsTheRunUnlessItIsToGoOn() throws Exception {
        BuiltPlugins failing =
                new BuiltPlugins().with(catalog -> catalog.bindMeasurement(new FailingMeasurement("stereo-8ohm-12V5")));
        String steps = String.join(",", COLD, SECOND, "stereo-8ohm-13V5");
        BenchWords run = run(failing, "--driver", "simulated", "--measurement", "failing", "--step", steps, "--json");
        assertEquals(1, run.exitCode(), run.err());
        assertEquals("done", run.json().at("/items/0/status").asText());
        assertEquals("failed", run.json().at("/items/1/status").asText());
        assertTrue(run.json().at("/items/1/sentence").asText().contains("the lead fell off"), run.out());
        assertEquals("pending", run.json().at("/items/2/status").asText());
        assertFalse(run.json().get("complete").asBoolean());
        assertTrue(log().stream().anyMatch(entry -> entry.note()
                .filter(note -> note.text().contains("the lead fell off"))
                .isPresent()));
        BenchWords on = run(failing, "--driver", "simulated", "--measurement", "failing", "--step", steps, "--go-on");
        assertEquals(1, on.exitCode(), on.err());
        assertTrue(on.out().contains("2 of 3 are in the log; 1 measured now"), on.out());
        assertTrue(on.err().contains("the lead fell off"), on.err());
    }

    @Test
    void whatForbidsAStepIsSaidBeforeAnythingIsFed() throws Exception {
        BuiltPlugins strict = new BuiltPlugins()
                .with(catalog -> catalog.bindPrecaution(new FixedPrecaution(
                        new Problem(Severity.ERROR, "$.plan[1]", "The bench is on fire.", "Put it out."), SECOND)));
        BenchWords run = run(strict, "--driver", "simulated", "--step", COLD + "," + SECOND, "--yes", "--json");
        assertEquals(1, run.exitCode(), run.err());
        assertTrue(run.err().contains("The bench is on fire. Put it out."), run.err());
        assertEquals(1, run.json().get("refused").size());
        assertEquals(List.of(), log());
        BenchWords dry = run(strict, "--dry-run", "--step", SECOND, "--json");
        assertEquals(1, dry.exitCode());
        assertTrue(dry.json().at("/items/0/inTheWay").asText().contains("on fire"), dry.out());
        BenchWords on = run(strict, "--driver", "simulated", "--step", COLD + "," + SECOND, "--go-on");
        assertEquals(1, on.exitCode(), on.err());
        assertEquals(
                1, log().stream().filter(entry -> entry.reading().isPresent()).count());
    }

    @ParameterizedTest
    @CsvSource({
        "--driver simulated --step nowhere, no step of the plan",
        "--driver flying, there is org.ohmstead.bench.replayed",
        "--driver ohmstead, several bench drivers",
        "--driver simulated --measurement guess, no measurement",
        "--driver simulated --set q=1, no setting",
        "--driver simulated --set startDb=9, must be between",
        "--driver simulated --set startDb, write a name and a value",
        "--driver simulated --set startDb=-9 --set startDb=-8, twice",
        "--driver simulated --set driver.seed=x, cannot be set so",
        "--dry-run --set driver.seed=2, no bench is named"
    })
    void whatDoesNotFitIsRefusedWithWhatWould(String options, String sentence) throws Exception {
        BenchWords run = run(options.split(" "));
        assertEquals(3, run.exitCode(), run.err());
        assertTrue(run.err().contains(sentence), run.err());
        assertEquals("", run.out());
        assertFalse(Files.exists(project.resolve("log.db")));
    }

    @ParameterizedTest
    @CsvSource({"--json, Missing the bench", "--replay . --driver simulated, --replay takes the readings from a folder"
    })
    void wrongUsageIsTaught(String options, String sentence) {
        BenchWords run = run(options.split(" "));
        assertEquals(2, run.exitCode(), run.err());
        assertTrue(run.err().contains(sentence), run.err());
    }

    @Test
    void aStepWithoutItsLoadIsLeftOutAndSaid() throws Exception {
        Path file = project.resolve("project.json");
        Files.writeString(file, Files.readString(file).replace("\"loadId\": \"8ohm\"", "\"loadId\": \"9ohm\""));
        BenchWords run = run("--driver", "simulated", "--step", COLD + ",stereo-4ohm-11V5", "--yes", "--json");
        assertEquals(1, run.exitCode(), run.err());
        assertEquals(COLD, run.json().at("/leftOut/0").asText());
        assertEquals("done", run.json().at("/items/0/status").asText());
        assertTrue(run.err().contains("ohmstead check"), run.err());
    }

    @Test
    void withoutPluginsItSaysHowToStart() {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        // Outside of the framework there are no services.
        int exitCode = Ohmstead.run(
                words("--driver", "simulated"), new PrintStream(new ByteArrayOutputStream()), new PrintStream(err));
        assertEquals(4, exitCode);
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("start script"), err.toString(StandardCharsets.UTF_8));
    }
}
