// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.FrameworkUtil;

/** The main job and the words of the command line inside the framework, as the product runs them. */
class CommandLineTest {
    @TempDir
    private static Path shared;

    private static Path demo;
    private static Words demoRun;

    @TempDir
    private Path folder;

    @BeforeAll
    static void runTheDemo() {
        assertNotNull(FrameworkUtil.getBundle(CommandLineTest.class), "this test must run inside the framework");
        demoRun = Words.run(
                "demo",
                "--data",
                demoData().toString(),
                "--output",
                shared.resolve("demo").toString());
        demo = shared.resolve("demo/larkspur.ohmstead");
    }

    private static Path demoData() {
        return Path.of(System.getProperty("ohmstead.root"), "demo-data");
    }

    @Test
    void demoEndsWithJudgedRatingsAndTheirFiles() throws IOException {
        assertEquals(0, demoRun.exitCode(), demoRun.err());
        for (String verdict : List.of("meets", "falls short", "undecided")) {
            assertTrue(demoRun.out().contains(verdict), demoRun.out());
        }
        List<String> paths = demoRun.out()
                .lines()
                .filter(line -> line.contains(".html")
                        || line.contains(".pdf")
                        || line.contains(".db")
                        || line.contains(".csv"))
                .map(line -> line.substring(line.indexOf('/')))
                .toList();
        assertEquals(4, paths.size(), demoRun.out());
        for (String path : paths) {
            assertTrue(Files.size(Path.of(path)) > 10_000, path);
        }
    }

    @Test
    void theSheetNamesEveryRatingAndTheHeadOfTheLog() throws IOException {
        Path html;
        try (Stream<Path> sheets = Files.list(demo.resolve("sheets"))) {
            html = sheets.filter(file -> file.toString().endsWith(".html"))
                    .findFirst()
                    .orElseThrow();
        }
        String text = Files.readString(html);
        JsonNode project =
                new ObjectMapper().readTree(demo.resolve("project.json").toFile());
        for (JsonNode rating : project.at("/amplifier/ratings")) {
            assertTrue(text.contains(rating.get("wording").asText()), rating.toString());
        }
        JsonNode verified =
                Words.run("log", "verify", "--json", demo.toString()).json();
        assertEquals(0, verified.get("faults").size());
        assertTrue(text.contains(verified.get("headHash").asText()));
        assertEquals(
                new ObjectMapper()
                        .readTree(demo.resolve("project.json").toFile())
                        .at("/plan")
                        .size(),
                verified.get("entriesChecked").asInt());
    }

    @Test
    void curvesSayThePowerAtAnyVoltage() {
        JsonNode curves = Words.run("curves", "--json", "--at", "13.8", demo.toString())
                .json()
                .get("curves");
        assertTrue(curves.size() >= 15, curves.toString());
        for (JsonNode curve : curves) {
            double watts = curve.at("/predictions/0/powerWatts").asDouble();
            assertTrue(watts > 20 && watts < 600, curve.toString());
            assertTrue(curve.at("/predictions/0/standardUncertaintyWatts").asDouble() > 0, curve.toString());
        }
        assertEquals(2, Words.run("curves", "--at", "x", demo.toString()).exitCode());
        assertEquals(3, Words.run("curves", "--at", "-3", demo.toString()).exitCode());
    }

    @Test
    void theJointStudySeesWhatNoLoadAloneCan() throws IOException {
        JsonNode all = Words.run("curves", "--json", "--at", "13.5", "--load-ohms", "4", demo.toString())
                .json();
        JsonNode study = all.at("/studies/0");
        // The simulated output stage limits its current, which only the loads below the lowest rated one show.
        assertEquals("CURRENT_LIMITED", study.get("model").asText(), study.toString());
        double joint = study.at("/predictions/0/powerWatts").asDouble();
        double alone = 0;
        for (JsonNode curve : all.get("curves")) {
            if (curve.get("mode").asText().equals("STEREO")
                    && curve.get("loadOhms").asDouble() == 4
                    && curve.get("kind").asText().equals("CONTINUOUS")) {
                alone = curve.at("/predictions/0/powerWatts").asDouble();
            }
        }
        assertEquals(alone, joint, 0.03 * alone, "the load's own curve and the joint one");
        String text = Words.run("curves", "--read-at-supply", "60", "--robust", demo.toString())
                .out();
        assertTrue(text.contains("All loads and modes together"), text);
        JsonNode same = Words.run("curves", "--json", "--at", "14.4", "--against", demo.toString(), demo.toString())
                .json()
                .get("differences");
        assertTrue(same.size() >= 8, same.toString());
        same.forEach(difference -> assertTrue(difference.asText().contains("+0.00 dB"), difference.asText()));
        assertEquals(
                3, Words.run("curves", "--read-at-supply", "0", demo.toString()).exitCode());
        assertEquals(
                3, Words.run("curves", "--load-ohms", "-1", demo.toString()).exitCode());
    }

    @Test
    void theForecastTakesPowersFromTheLog() {
        JsonNode readings = Words.run("log", "list", "--json", demo.toString()).json();
        Words forecast = Words.run("thermal", "plan", "--from-log", "--json", demo.toString());
        JsonNode steps = forecast.json().get("steps");
        assertEquals(readings.get("entries").size(), steps.size());
        for (JsonNode step : steps) {
            assertEquals("READING", step.get("powerBasis").asText(), step.toString());
        }
        String text =
                Words.run("thermal", "plan", "--from-log", demo.toString()).out();
        assertTrue(text.contains(steps.size() + " from readings, 0 from ratings, 0 unknown"), text);
        // What was measured spares the fuses: the simulated amplifier gives less into 1 ohm than its ratings imply.
        assertEquals(0, forecast.exitCode(), forecast.err());
    }

    @Test
    void aReadingSetAsideIsInNoCurve() throws IOException {
        Path project = copy(demo);
        Path file = project.resolve("project.json");
        int before = Words.run("curves", "--json", project.toString())
                .json()
                .at("/curves/0/points")
                .size();
        String text = Files.readString(file);
        assertTrue(text.contains("\"setAside\": []"), "the demo sets nothing aside");
        Files.writeString(
                file,
                text.replace(
                        "\"setAside\": []",
                        "\"setAside\": [{\"entryId\": \"R0001\", \"reason\": \"amplifier still cold\"}]"));
        assertEquals(
                before - 1,
                Words.run("curves", "--json", project.toString())
                        .json()
                        .at("/curves/0/points")
                        .size());
    }

    @Test
    void runningAgainLogsNothingTwiceAndAVoidIsSeen() throws IOException {
        Path project = copy(demo);
        Path recordings = demoData().resolve("recordings");
        Words again = Words.run("run", project.toString(), "--replay", recordings.toString(), "--json");
        assertEquals(0, again.exitCode(), again.err());
        assertEquals(0, again.json().get("logged").size());
        assertEquals(
                0,
                Words.run("log", "void", project.toString(), "R0001", "--reason", "lead was loose", "--who", "T")
                        .exitCode());
        assertEquals(
                3,
                Words.run("log", "void", project.toString(), "R0001", "--reason", "twice")
                        .exitCode());
        assertTrue(Words.run("log", "list", project.toString()).out().contains("void: lead was loose"));
        assertEquals(
                "V0001",
                Words.run("log", "show", project.toString(), "V0001")
                        .json()
                        .get("id")
                        .asText());
        Words export = Words.run("log", "export", "csv", project.toString());
        assertTrue(export.out().startsWith("entry,"), export.out());
        assertTrue(export.out().contains("lead was loose"), export.out());
        assertEquals(0, Words.run("log", "verify", project.toString()).exitCode());
        Words report = Words.run("report", project.toString(), "--json");
        assertEquals(1, report.exitCode(), "a rating of the demo falls short: " + report.err());
    }

    @Test
    void analyzePrintsTheAgreedFields() {
        Path capture = demoData().resolve("recordings/burst-stereo-4ohm-14V4-1kHz-L01.wav");
        JsonNode channel = Words.run(
                        "analyze", capture.toString(), "--volts-per-full-scale", "50", "--load-ohms", "4", "--json")
                .json()
                .at("/channels/0");
        for (String field : List.of(
                "frequencyHz",
                "outputVoltsRms",
                "outputVoltsPeak",
                "dcVolts",
                "crestFactorDb",
                "powerWatts",
                "fundamentalPowerWatts",
                "thdFRatio",
                "thdRRatio",
                "thdPlusNoiseRRatio",
                "sinadDb")) {
            assertTrue(channel.path(field).isNumber(), field);
        }
        assertTrue(channel.at("/clipping/clipped").isBoolean());
        assertTrue(channel.at("/harmonics/0/phaseDegrees").isNumber());
        assertEquals(0.02, channel.at("/burst/onSeconds").asDouble(), 0.001);
        assertEquals(0.5, channel.at("/burst/periodSeconds").asDouble(), 0.001);
        assertTrue(channel.at("/burst/powerWatts").asDouble()
                > 10 * channel.at("/burst/meanPowerWatts").asDouble());
    }

    @Test
    void aByteChangedInTheLogIsFoundAndNothingIsMadeFromIt() throws IOException {
        Path project = copy(demo);
        Path log = project.resolve("log.db");
        byte[] content = Files.readAllBytes(log);
        byte[] wanted = "\"powerWatts\":".getBytes(StandardCharsets.US_ASCII);
        int at = indexOf(content, wanted, 0);
        byte[] passage = Arrays.copyOfRange(content, at, at + 60);
        // The database may hold outdated copies of a page's content; the byte changes in each, so in the one that
        // counts.
        for (int found = at; found >= 0; found = indexOf(content, passage, found + 1)) {
            int place = found + wanted.length;
            content[place] = (byte) (content[place] == '9' ? '8' : '9');
        }
        Files.write(log, content);
        for (List<String> words : List.of(
                List.of("log", "verify", project.toString()),
                List.of("log", "list", project.toString()),
                List.of("log", "export", "json", project.toString()),
                List.of("log", "void", project.toString(), "R0002", "--reason", "late"),
                List.of(
                        "run",
                        project.toString(),
                        "--replay",
                        demoData().resolve("recordings").toString()),
                List.of("report", project.toString()),
                List.of("curves", project.toString()))) {
            Words.run(words).isRefused();
        }
        assertArrayEquals(content, Files.readAllBytes(log), "the log was not touched");
    }

    @Test
    void aProjectFromTheFutureIsRefusedAndLeftAlone() throws IOException {
        Path project = copy(demo);
        Path file = project.resolve("project.json");
        String text = Files.readString(file).replace("\"formatVersion\": 1,", "\"formatVersion\": 99,");
        Files.writeString(file, text);
        for (String word : List.of("check", "curves", "report")) {
            assertTrue(Words.run(word, project.toString()).isRefused().contains("99"));
        }
        assertEquals(text, Files.readString(file));
    }

    @Test
    void oneBadCaptureLosesOnlyItsOwnStep() throws IOException {
        Path recordings = Files.createDirectory(folder.resolve("recordings"));
        List<String> entries = new ArrayList<>();
        JsonNode list = new ObjectMapper()
                .readTree(demoData().resolve("recordings/recordings.json").toFile());
        for (JsonNode recording : list.get("recordings")) {
            String step = recording.get("step").asText();
            if (step.equals("stereo-8ohm-11V5") || step.equals("stereo-8ohm-12V5")) {
                String name = recording.get("file").asText();
                byte[] wav = Files.readAllBytes(demoData().resolve("recordings").resolve(name));
                boolean broken = step.equals("stereo-8ohm-12V5") && name.endsWith("L05.wav");
                Files.write(recordings.resolve(name), broken ? Arrays.copyOf(wav, wav.length / 2) : wav);
                entries.add(recording.toString());
            }
        }
        Files.writeString(
                recordings.resolve("recordings.json"),
                "{\"formatVersion\":1,\"recordings\":[" + String.join(",", entries) + "]}");
        Path project = Files.createDirectory(folder.resolve("p.ohmstead"));
        Files.copy(demoData().resolve("larkspur.ohmstead/project.json"), project.resolve("project.json"));
        Words run = Words.run("run", project.toString(), "--replay", recordings.toString(), "--json");
        assertEquals(3, run.exitCode());
        assertEquals(1, run.json().get("logged").size());
        assertTrue(run.json().at("/failures/0").asText().contains("L05.wav"), run.out());
        assertFalse(run.err().contains("\tat "), run.err());
    }

    @Test
    void usageIsTaughtNotThrown() {
        assertEquals(0, Words.run("--help").exitCode());
        assertTrue(Words.run("--version").out().startsWith("ohmstead 0."));
        for (String word : List.of(
                "demo",
                "check",
                "analyze",
                "load",
                "thermal",
                "plugins",
                "run",
                "curves",
                "log",
                "log find",
                "log join",
                "log verify",
                "report",
                "compare",
                "lab",
                "project",
                "setup gain",
                "signal make",
                "sound level",
                "lesson show")) {
            Words help = Words.run((word + " --help").split(" "));
            assertEquals(0, help.exitCode());
            assertTrue(help.out().startsWith("Usage: ohmstead " + word), help.out());
        }
        assertEquals(2, Words.run("fly").exitCode());
        assertEquals(2, Words.run("analyze").exitCode());
    }

    private Path copy(Path project) throws IOException {
        Path target = folder.resolve("copy.ohmstead");
        try (Stream<Path> files = Files.walk(project)) {
            for (Path file :
                    files.filter(path -> !path.toString().contains("captures")).toList()) {
                Path to = target.resolve(project.relativize(file).toString());
                if (Files.isDirectory(file)) {
                    Files.createDirectories(to);
                } else {
                    Files.copy(file, to);
                }
            }
        }
        return target;
    }

    private static int indexOf(byte[] content, byte[] wanted, int from) {
        for (int i = from; i <= content.length - wanted.length; i++) {
            if (Arrays.equals(content, i, i + wanted.length, wanted, 0, wanted.length)) {
                return i;
            }
        }
        return -1;
    }
}
