// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.ChannelReading;

/** The budget of readings that the demo's recordings give, and the verdicts beside it. */
class LogBudgetTest {
    private static final String STEP = "stereo-4ohm-14V4";
    private static final double EXACT = 1e-9;

    @TempDir
    private static Path folder;

    private static Path project;

    @BeforeAll
    static void replayOneStep() throws Exception {
        project = BenchWords.project(folder);
        change(project, root -> {
            // As the demo's project was when version 0.1.0 logged its readings.
            root.get("bench").get("meters").forEach(meter -> ((ObjectNode) meter).remove("stability"));
            ((ObjectNode) root.get("bench")).remove("repeatability");
        });
        Path recordings = BenchWords.recordings(folder, List.of(STEP));
        BenchWords ran =
                BenchWords.run(new BuiltPlugins(), "run", project.toString(), "--replay", recordings.toString());
        assertEquals(0, ran.exitCode(), ran.err());
    }

    private static void change(Path of, Consumer<ObjectNode> how) throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode root =
                (ObjectNode) mapper.readTree(of.resolve("project.json").toFile());
        how.accept(root);
        mapper.writeValue(of.resolve("project.json").toFile(), root);
    }

    private static BenchWords words(String... words) {
        return BenchWords.run(new BuiltPlugins(), words);
    }

    private static ChannelReading logged(int channel) throws Exception {
        return BenchWords.log(project).get(0).reading().orElseThrow().channels().get(channel);
    }

    @Test
    void theBudgetOfADemoReadingComesToItsLoggedUncertainty() throws Exception {
        JsonNode root =
                words("log", "budget", project.toString(), "R0001", "--json").json();
        assertEquals("R0001", root.get("entry").asText());
        assertEquals(2, root.get("channels").size());
        JsonNode first = root.get("channels").get(0);
        double logged = logged(0).standardUncertaintyWatts();
        assertEquals(logged, first.get("combinedStandardUncertaintyWatts").doubleValue(), EXACT);
        // Version 0.1.0 logged 0.503524403429649 W for the same recordings, specification and resolution in one part.
        assertEquals(0.503524403429649, logged, 1e-9);
        assertEquals(98.2597683920902, first.get("powerWatts").doubleValue(), 1e-9);
        // Nothing but type B: a normal distribution's factor (GUM table G.1).
        assertTrue(first.get("effectiveDegreesOfFreedom").isNull());
        assertEquals(1.959964, first.get("coverageFactor").doubleValue(), 1e-6);
        assertEquals(1.959964 * logged, first.get("expandedUncertaintyWatts").doubleValue(), 1e-6);
        double shares = 0;
        for (JsonNode part : first.get("parts")) {
            shares += part.get("varianceShare").doubleValue();
        }
        assertEquals(1, shares, EXACT);
        JsonNode recorder = first.get("parts").get(0);
        assertEquals("output volts, specification", recorder.get("source").asText());
        assertEquals("rectangular", recorder.get("shape").asText());
        // The demo's recorder: +-(0.4 % of reading + 5 mV), rectangular.
        assertEquals(
                (0.004 * logged(0).outputVoltsRms() + 0.005) / Math.sqrt(3),
                recorder.get("inputStandardUncertainty").doubleValue(),
                EXACT);
        // A ruling rectangle ends sooner than a normal distribution.
        assertFalse(first.get("monteCarlo").get("agrees").booleanValue());
        assertTrue(first.get("monteCarlo").get("sentence").asText().contains("is too wide"));
    }

    @Test
    void theTableIsForPeople() {
        BenchWords shown = words("log", "budget", project.toString(), "R0001", "--channel", "B", "--coverage", "99");
        assertEquals(0, shown.exitCode(), shown.err());
        assertTrue(shown.out().startsWith("Entry R0001, channel B: "), shown.out());
        // GUM table G.1: 2.576 for 99 %.
        assertTrue(shown.out().contains("coverage factor for 99 %  k = 2.58"), shown.out());
        assertTrue(shown.out().contains("effective degrees of freedom   infinite"), shown.out());
        assertTrue(shown.out().contains("interval, Monte Carlo"), shown.out());
        assertTrue(shown.out().contains("No part stands for the warming of the load"), shown.out());
    }

    @Test
    void whatTheStockTellsOfItsPartsAndTheBenchOfItsMetersIsInTheBudget() throws Exception {
        Path warm = BenchWords.project(folder.resolve("warm"));
        change(warm, root -> root.get("bench").get("parts").forEach(part -> ((ObjectNode) part)
                .putObject("traits")
                .put("temperatureCoefficientPerKelvin", 1e-4)
                .put("sinkKelvinPerWatt", 0.5)
                .put("elementKelvinPerWatt", 0.4)));
        Path recordings = BenchWords.recordings(folder.resolve("again"), List.of(STEP));
        BenchWords ran = words("run", warm.toString(), "--replay", recordings.toString());
        assertEquals(0, ran.exitCode(), ran.err());
        JsonNode channel = words("log", "budget", warm.toString(), "R0001", "--json")
                .json()
                .get("channels")
                .get(0);
        double watts = channel.get("powerWatts").doubleValue();
        // Two equal resistors take half the power each at 0.9 K/W and 100 ppm/K; a rectangular bound (GUM 4.3.7).
        double warming = watts * (watts / 2 * 0.9 * 1e-4) / Math.sqrt(3);
        assertEquals(
                warming,
                Math.abs(part(channel, "load resistance, heating")
                        .get("effectWatts")
                        .doubleValue()),
                EXACT);
        assertFalse(channel.get("notes").toString().contains("No part stands for the warming"));
        // 0.04 % with k = 2 (GUM 4.3.3) of volts; the power moves by twice the ratio.
        assertEquals(
                2 * watts * 0.0004 / 2,
                part(channel, "output volts, calibration").get("effectWatts").doubleValue(),
                EXACT);
        // 0.05 % with 9 degrees of freedom, which the effective ones exceed by far (GUM G.4.1).
        JsonNode repeatability = part(channel, "repeatability of the bench");
        assertEquals(0.0005 * watts, repeatability.get("effectWatts").doubleValue(), EXACT);
        assertEquals(9, repeatability.get("degreesOfFreedom").doubleValue());
        double combined = channel.get("combinedStandardUncertaintyWatts").doubleValue();
        assertEquals(
                9 * Math.pow(combined / (0.0005 * watts), 4),
                channel.get("effectiveDegreesOfFreedom").doubleValue(),
                1e-3);
    }

    private static JsonNode part(JsonNode channel, String source) {
        for (JsonNode part : channel.get("parts")) {
            if (part.get("source").asText().equals(source)) {
                return part;
            }
        }
        throw new AssertionError(source + " is not among " + channel.get("parts"));
    }

    @Test
    void saysWhatIsWrongWithTheWords() {
        BenchWords unknown = words("log", "budget", project.toString(), "R0099");
        assertEquals(3, unknown.exitCode());
        assertTrue(unknown.err().contains("The log has no entry R0099."), unknown.err());
        BenchWords channel = words("log", "budget", project.toString(), "R0001", "--channel", "C");
        assertEquals(3, channel.exitCode());
        assertTrue(channel.err().contains("has no channel C; it has A, B."), channel.err());
        BenchWords wide = words("log", "budget", project.toString(), "R0001", "--coverage", "100");
        assertEquals(3, wide.exitCode());
        assertTrue(wide.err().contains("between 50 and 99.99 %"), wide.err());
    }

    @Test
    void curvesJudgeTheRatingsByTheProjectsRule() throws Exception {
        JsonNode usual = words("curves", project.toString(), "--json").json();
        assertEquals("GUARDED_ACCEPTANCE", usual.get("verdictRule").get("kind").asText());
        assertEquals(0.05, usual.get("verdictRule").get("riskRatio").doubleValue(), EXACT);
        JsonNode met = usual.get("ratings").get(0);
        assertEquals("4-ohm", met.get("id").asText());
        assertEquals("MEETS", met.get("verdict").asText());
        assertEquals(
                1 - met.get("probabilityMet").doubleValue(),
                met.get("consumersRisk").doubleValue(),
                EXACT);
        assertFalse(met.has("producersRisk"));
        assertEquals("NOT_TESTED", usual.get("ratings").get(1).get("verdict").asText());

        Path other = folder.resolve("other.ohmstead");
        Files.createDirectories(other);
        Files.copy(project.resolve("log.db"), other.resolve("log.db"));
        Files.copy(project.resolve("project.json"), other.resolve("project.json"));
        change(other, root -> {
            ((ObjectNode) root.get("sheet"))
                    .putObject("verdictRule")
                    .put("kind", "guardedRejection")
                    .put("riskRatio", 0.01);
            // The weakest channel gives about 97.3 W: a claim of 98 W is likelier missed, but not surely.
            ((ObjectNode) root.get("amplifier").get("ratings").get(0)).put("powerWatts", 98);
        });
        BenchWords rejection = words("curves", other.toString());
        assertTrue(rejection.out().contains("Guarded rejection (JCGM 106)"), rejection.out() + rejection.err());
        JsonNode ratings = words("curves", other.toString(), "--json").json();
        assertEquals("MEETS", ratings.get("ratings").get(0).get("verdict").asText());
        assertTrue(ratings.get("ratings").get(0).get("consumersRisk").doubleValue() > 0.5);
    }
}
