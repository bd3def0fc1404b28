// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The words about heat, duty and supply inside the framework, on the demo project as it is before any run. */
class ThermalWordsTest {
    private static final double SAME = 1e-6;

    private static JsonNode project;
    private static JsonNode plan;

    @TempDir
    private Path folder;

    @BeforeAll
    static void forecastTheDemo() throws IOException {
        project = new ObjectMapper().readTree(demo().resolve("project.json").toFile());
        plan = Words.run("thermal", "plan", demo().toString(), "--json").json();
    }

    private static Path demo() {
        return Path.of(System.getProperty("ohmstead.root"), "demo-data/larkspur.ohmstead");
    }

    private static List<String> ids(JsonNode forecast) {
        List<String> ids = new ArrayList<>();
        forecast.get("steps").forEach(step -> ids.add(step.get("id").asText()));
        return ids;
    }

    private static List<String> planIds() {
        List<String> ids = new ArrayList<>();
        project.get("plan").forEach(step -> ids.add(step.get("id").asText()));
        return ids;
    }

    private static JsonNode step(String id) {
        for (JsonNode step : project.get("plan")) {
            if (step.get("id").asText().equals(id)) {
                return step;
            }
        }
        throw new AssertionError("no step " + id);
    }

    @Test
    void everyStepIsInTheScheduleOnce() {
        List<String> scheduled = ids(plan);
        assertEquals(planIds().size(), scheduled.size());
        Collections.sort(scheduled);
        List<String> wanted = planIds();
        Collections.sort(wanted);
        assertEquals(wanted, scheduled);
        assertTrue(plan.get("possible").asBoolean());
    }

    @Test
    void timesAddUpAndStayNearTheLowerBound() {
        double on = project.get("plan").size()
                * project.at("/heat/pacing/stepSeconds").asDouble();
        assertEquals(on, plan.get("onSeconds").asDouble(), SAME);
        double total = plan.get("totalSeconds").asDouble();
        assertEquals(
                on
                        + plan.get("changeSeconds").asDouble()
                        + plan.get("restSeconds").asDouble(),
                total,
                SAME);
        double bound = plan.get("lowerBoundSeconds").asDouble();
        assertTrue(bound <= total + SAME, bound + " is above " + total);
        assertTrue(total <= 1.1 * bound, total + " is far above " + bound);
        double now = 0;
        for (JsonNode step : plan.get("steps")) {
            now += step.get("changeSeconds").asDouble()
                    + step.get("restSeconds").asDouble();
            assertEquals(now, step.get("startSeconds").asDouble(), 1e-3);
            now = step.get("endSeconds").asDouble();
        }
        assertEquals(total, now, 1e-3);
    }

    @Test
    void changesTakeWhatTheProjectSays() {
        JsonNode pacing = project.at("/heat/pacing");
        String last = "";
        for (JsonNode job : plan.get("steps")) {
            String id = job.get("id").asText();
            double expected = 0;
            if (!last.isEmpty()) {
                JsonNode from = step(last);
                JsonNode to = step(id);
                expected += from.get("mode").equals(to.get("mode"))
                        ? 0
                        : pacing.get("modeChangeSeconds").asDouble();
                expected += from.get("loadId").equals(to.get("loadId"))
                        ? 0
                        : pacing.get("loadChangeSeconds").asDouble();
                if (from.get("supplyVolts").asDouble() != to.get("supplyVolts").asDouble()) {
                    expected =
                            Math.max(expected, pacing.get("supplyChangeSeconds").asDouble());
                }
            }
            assertEquals(expected, job.get("changeSeconds").asDouble(), SAME, id);
            last = id;
        }
    }

    @Test
    void stereoComesFirstAndStressRises() {
        boolean bridged = false;
        Map<String, Double> volts = new HashMap<>();
        for (String id : ids(plan)) {
            JsonNode step = step(id);
            boolean now = step.get("mode").asText().equals("bridged");
            assertTrue(now || !bridged, id + " comes after a bridged step");
            bridged = now;
            String key = step.get("mode").asText()
                    + step.get("loadId").asText()
                    + step.at("/stimulus/kind").asText();
            double supply = step.get("supplyVolts").asDouble();
            assertTrue(supply >= volts.getOrDefault(key, 0.0), id);
            volts.put(key, supply);
        }
    }

    @Test
    void noPlaceComesNearerToItsLimitThanTheMargin() {
        double margin = project.at("/heat/pacing/marginKelvin").asDouble();
        int limited = 0;
        for (JsonNode step : plan.get("steps")) {
            for (JsonNode place : step.get("places")) {
                if (place.has("limitCelsius")) {
                    limited++;
                    assertTrue(
                            place.at("/peakCelsius/1").asDouble()
                                    <= place.get("limitCelsius").asDouble() - margin + SAME,
                            step.get("id") + " " + place);
                }
            }
        }
        assertTrue(limited > planIds().size(), "only " + limited + " limits were looked at");
    }

    @Test
    void currentFollowsFromPowerAndVolts() {
        for (JsonNode step : plan.get("steps")) {
            // Energy: volts times average amperes are output and heat, here with the most heat.
            double volts = step(step.get("id").asText()).get("supplyVolts").asDouble();
            double watts =
                    step.get("outputWatts").asDouble() + step.at("/heatWatts/1").asDouble();
            assertEquals(watts, volts * step.get("supplyAverageAmps").asDouble(), 0.01 * watts, step.toString());
            assertTrue(step.get("supplyRmsAmps").asDouble()
                    >= step.get("supplyAverageAmps").asDouble() * (1 - SAME));
        }
    }

    @Test
    void aRatingAtItsOwnVoltsIsThePowerToExpect() {
        JsonNode found = plan.get("steps").get(ids(plan).indexOf("stereo-4ohm-14V4"));
        // The demo's maker states 2 x 90 W into 4 ohm at 14.4 V.
        assertEquals(90, found.get("powerWatts").asDouble(), SAME);
        assertEquals(180, found.get("outputWatts").asDouble(), SAME);
        assertEquals("RATING", found.get("powerBasis").asText());
    }

    @Test
    void theTextNamesStepsTotalsStopsAndCautions() {
        Words words = Words.run("thermal", "plan", demo().toString());
        for (String id : planIds()) {
            assertTrue(words.out().contains(id), id);
        }
        for (String part : List.of(
                "No schedule can take less than",
                "Wh from the supply",
                "Stop by hand when",
                "What the forecast rests on",
                "from memory",
                "Caution: ",
                "Local codes")) {
            assertTrue(words.out().contains(part), part + " is missing in " + words.out());
        }
        // By the ratings of other loads the 1 ohm steps might open the fuses: a bound of the power, which warns.
        assertEquals(0, words.exitCode(), words.err());
        assertTrue(words.out().contains("opens"), words.out());
    }

    @Test
    void theOrderOfThePlanIsKeptWhenWanted() {
        JsonNode kept = Words.run("thermal", "plan", demo().toString(), "--keep-order", "--json")
                .json();
        assertEquals(planIds(), ids(kept));
        assertEquals("FIXED_ORDER", kept.get("ending").asText());
        assertTrue(
                kept.get("totalSeconds").asDouble() >= plan.get("totalSeconds").asDouble() - SAME);
    }

    @Test
    void theRestOfARunIsPlannedFromWhatWasMeasured() {
        List<String> ids = planIds();
        List<String> done = ids.subList(0, ids.size() - 1);
        JsonNode rest = Words.run(
                        "thermal",
                        "plan",
                        demo().toString(),
                        "--json",
                        "--done",
                        String.join(",", done),
                        "--measured",
                        "case=74")
                .json();
        assertEquals(List.of(ids.get(ids.size() - 1)), ids(rest));
        JsonNode last = rest.at("/steps/0");
        // With so hot a case the step with the most heat has to wait until it has cooled down.
        assertEquals("LIMIT", last.get("restCause").asText(), rest.toString());
        assertTrue(last.get("restSeconds").asDouble() > 60, last.toString());
        JsonNode cool = Words.run(
                        "thermal",
                        "plan",
                        demo().toString(),
                        "--json",
                        "--done",
                        String.join(",", done),
                        "--measured",
                        "case=25")
                .json();
        assertEquals(0, cool.at("/steps/0/restSeconds").asDouble(), SAME, cool.toString());
        Words all = Words.run("thermal", "plan", demo().toString(), "--done", String.join(",", ids));
        assertEquals(0, all.exitCode(), all.err());
        assertTrue(all.err().contains("nothing is left"), all.err());
    }

    @Test
    void aPlanInAirThatIsTooHotIsImpossible() throws IOException {
        String text = Files.readString(demo().resolve("project.json"));
        assertTrue(text.contains("\"ambientCelsius\": 22.5"));
        Path file = Files.writeString(
                folder.resolve("project.json"), text.replace("\"ambientCelsius\": 22.5", "\"ambientCelsius\": 76"));
        Words words = Words.run("thermal", "plan", file.toString());
        assertEquals(1, words.exitCode(), words.out() + words.err());
        assertTrue(words.out().contains("cannot be run"), words.out());
        assertTrue(words.err().startsWith("ohmstead: The plan cannot be run as it is. "), words.err());
        assertFalse(words.err().contains("\tat "), words.err());
        JsonNode json = Words.run("thermal", "plan", file.toString(), "--json").json();
        assertFalse(json.get("possible").asBoolean());
        assertTrue(json.get("obstacles").size() > 0, json.toString());
        assertTrue(Words.run("check", file.toString()).out().contains("$.bench.ambientCelsius"));
    }

    @Test
    void aStepOfThePlanIsLookedAtByItself() {
        JsonNode step = Words.run("thermal", "step", demo().toString(), "stereo-4ohm-14V4", "--json")
                .json();
        assertEquals(180, step.get("outputWatts").asDouble(), SAME);
        assertEquals(14.4, step.get("terminalVolts").asDouble(), SAME);
        double heat = step.at("/heatWatts/1").asDouble();
        double hottest = 0;
        for (JsonNode place : step.get("places")) {
            hottest = place.get("id").asText().equals("case")
                    ? place.at("/settledCelsius/1").asDouble()
                    : hottest;
        }
        // Closed form: ambient plus heat times the most thermal resistance that the project gives.
        assertEquals(
                22.5
                        + heat
                                * project.at("/heat/amplifier/caseKelvinPerWatt/high")
                                        .asDouble(),
                hottest,
                1e-3);
        assertTrue(step.get("holds").asBoolean());
        assertTrue(step.at("/onTime/value").asDouble() > 20, step.toString());
        Words text = Words.run("thermal", "step", demo().toString(), "burst-stereo-4ohm-14V4");
        assertEquals(0, text.exitCode(), text.err());
        assertTrue(text.out().contains("heat during a burst"), text.out());
        assertTrue(text.out().contains("Caution: "), text.out());
        Words hard = Words.run("thermal", "step", demo().toString(), "stereo-1ohm-14V4");
        assertEquals(0, hard.exitCode(), hard.err());
        assertTrue(hard.out().contains("fuse bank"), hard.out());
    }

    @Test
    void tablesOfCablesAndFusesAreThereInTheProduct() {
        JsonNode cable = Words.run(
                        "thermal", "cable", "--square-millimetres", "35", "--metres", "5", "--amps", "100", "--json")
                .json();
        // IEC 60228: 0.554 ohm/km for flexible 35 mm2, 10 m there and back.
        assertEquals(0.00554, cable.get("highestFlexibleOhms").asDouble(), 1e-9);
        Words fuse = Words.run("thermal", "fuse", "--amps", "60", "--rated-amps", "30");
        assertEquals(1, fuse.exitCode(), fuse.err());
        // ISO 8820-3: a blade fuse opens within 5 s at twice its rating.
        assertTrue(fuse.out().contains("5.00 s"), fuse.out());
    }

    @ParameterizedTest
    @CsvSource({
        "--done,nothing,no step of the plan",
        "--done,'stereo-4ohm-14V4,stereo-4ohm-14V4',twice",
        "--measured,case,as in case=48",
        "--measured,boot=40,no point of this forecast",
        "--measured,case=hot,does not begin with a number",
        "--measured,'case=40,case=41',twice",
        "--measured,case=5000,must be between",
        "--rested-seconds,10,--done",
        "--time-limit-seconds,0,above 0",
    })
    void badInputAboutARunIsRefused(String option, String value, String expected) {
        String sentence =
                Words.run("thermal", "plan", demo().toString(), option, value).isRefused();
        assertTrue(sentence.contains(expected), sentence);
    }

    @Test
    void badInputAboutAStepOrALogIsRefused() {
        assertTrue(Words.run("thermal", "step", demo().toString()).isRefused().contains("The step is missing"));
        assertTrue(
                Words.run("thermal", "step", demo().toString(), "x").isRefused().contains("\"x\" is no step"));
        assertTrue(Words.run("thermal", "step", demo().toString(), "x", "--watts", "5")
                .isRefused()
                .contains("leave the one or the other out"));
        assertTrue(Words.run("thermal", "plan", demo().toString(), "--from-log")
                .isRefused()
                .contains("log"));
        assertTrue(Words.run("thermal", "identify", folder.resolve("none.csv").toString(), "--cool-down")
                .isRefused()
                .contains("does not exist"));
        assertTrue(Words.run("thermal", "plan", folder.resolve("none").toString())
                .isRefused()
                .contains("none"));
    }

    @Test
    void aStepOfWhichNothingTellsThePowerIsNotCalledSafe() throws IOException {
        String text = Files.readString(demo().resolve("project.json"));
        String bare = text.replaceFirst("(?s)\"ratings\": \\[.*?\n    \\]", "\"ratings\": []");
        assertTrue(bare.length() < text.length(), "the ratings are gone");
        Path file = Files.writeString(folder.resolve("project.json"), bare);
        String sentence = Words.run("thermal", "step", file.toString(), "stereo-4ohm-14V4")
                .isRefused();
        assertTrue(sentence.contains("No power is known"), sentence);
        Words words = Words.run("thermal", "plan", file.toString());
        assertTrue(words.out().contains("0 from ratings, " + planIds().size() + " unknown"), words.out());
        assertTrue(words.out().contains("No power is known"), words.out());
    }

    @Test
    void everyWordTeachesItsUse() {
        assertTrue(Words.run("thermal").out().startsWith("Usage: ohmstead thermal"));
        for (String word : List.of("plan", "step", "cable", "fuse", "sink", "identify")) {
            Words help = Words.run("thermal", word, "--help");
            assertEquals(0, help.exitCode());
            assertTrue(help.out().startsWith("Usage: ohmstead thermal " + word), help.out());
            assertTrue(help.out().contains("Example: ohmstead thermal " + word), help.out());
            assertTrue(help.out().contains("Exit code 1"), help.out());
        }
        assertEquals(2, Words.run("thermal", "fly").exitCode());
        assertEquals(2, Words.run("thermal", "plan").exitCode());
    }
}
