// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plug-ins as services of the framework, and a plan that is carried out with them, as the product does it. */
class RunWordsTest {
    /** Alone on two processors it takes 20 s; on a bench where time passes it would take some five minutes. */
    private static final double MOST_SECONDS = 120;

    @TempDir
    private static Path folder;

    private static Path project;
    private static Words run;
    private static double seconds;

    @BeforeAll
    static void runTheWholePlan() throws IOException {
        project = newProject("whole");
        long start = System.nanoTime();
        run = Words.run("run", project.toString(), "--driver", "simulated", "--yes", "--json");
        seconds = (System.nanoTime() - start) / 1e9;
    }

    private static Path newProject(String name) throws IOException {
        Path made = Files.createDirectories(folder.resolve(name + ".ohmstead"));
        Path demo = Path.of(System.getProperty("ohmstead.root"), "demo-data/larkspur.ohmstead/project.json");
        Files.copy(demo, made.resolve("project.json"));
        return made;
    }

    @Test
    void theWholePlanOfTheDemoRunsOnTheSimulatedBench() throws IOException {
        assertEquals(0, run.exitCode(), run.err());
        JsonNode document = run.json();
        assertTrue(document.get("complete").asBoolean());
        assertEquals(32, document.get("items").size());
        for (JsonNode item : document.get("items")) {
            assertEquals("done", item.get("status").asText(), item.toString());
            JsonNode results = item.get("results");
            assertEquals(results.size(), item.get("entryIds").size());
            JsonNode power = results.get(results.size() - 1).at("/figures/0");
            assertTrue(power.get("value").asDouble() > 10 && power.get("value").asDouble() < 700, item.toString());
            assertEquals("W", power.get("unit").asText());
            assertTrue(power.get("standardUncertainty").asDouble() > 0, item.toString());
        }
        assertTrue(document.get("confirmed").size() > 0, "the loads get hot enough to burn");
        assertTrue(seconds < MOST_SECONDS, "the simulated bench waited: " + seconds + " s");
        JsonNode verified =
                Words.run("log", "verify", "--json", project.toString()).json();
        assertEquals(0, verified.get("faults").size());
        assertEquals(document.get("headHash").asText(), verified.get("headHash").asText());
        assertEquals(
                document.get("entries").asInt(), verified.get("entriesChecked").asInt());
        assertEquals(0, Words.run("curves", project.toString()).exitCode());
    }

    @Test
    void whatIsDoneIsNotDoneAgain() throws IOException {
        Words again = Words.run("run", project.toString(), "--driver", "simulated", "--yes", "--json");
        assertEquals(0, again.exitCode(), again.err());
        assertEquals(run.json().get("headHash"), again.json().get("headHash"));
    }

    @Test
    void theDryRunHearsThePrecautionsOfLoadAndHeat() throws IOException {
        Path fresh = newProject("dry");
        Words dry = Words.run("run", fresh.toString(), "--dry-run", "--json");
        assertEquals(0, dry.exitCode(), dry.err());
        Set<String> quantities = new HashSet<>();
        boolean warned = false;
        for (JsonNode item : dry.json().get("items")) {
            item.get("stopLimits")
                    .forEach(limit -> quantities.add(limit.get("quantity").asText()));
            for (JsonNode problem : item.get("problems")) {
                warned |= problem.get("needsYes").asBoolean();
            }
        }
        assertEquals(Set.of("OUTPUT_WATTS", "CASE_CELSIUS", "SUPPLY_AMPS"), quantities);
        assertTrue(warned);
        assertFalse(Files.exists(fresh.resolve("log.db")));
        Words refused = Words.run("run", fresh.toString(), "--driver", "simulated", "--step", "stereo-4ohm-14V4");
        assertEquals(1, refused.exitCode());
        assertTrue(refused.err().contains("--yes"), refused.err());
    }

    @Test
    void everyBuiltInPluginIsThere() {
        Words plugins = Words.run("plugins", "--json");
        assertEquals(0, plugins.exitCode(), plugins.err() + plugins.out());
        List<String> measurements = new ArrayList<>();
        List<String> drivers = new ArrayList<>();
        List<String> precautions = new ArrayList<>();
        for (JsonNode plugin : plugins.json().get("plugins")) {
            String id = plugin.get("id").asText();
            assertEquals("inUse", plugin.get("state").asText(), id);
            switch (plugin.get("kind").asText()) {
                case "measurement" -> {
                    measurements.add(id);
                    assertTrue(plugin.get("figures").size() > 0, id);
                }
                case "driver" -> {
                    drivers.add(id);
                    assertTrue(plugin.get("settings").size() > 0, id);
                }
                default -> precautions.add(id);
            }
        }
        assertEquals(12, measurements.size(), measurements.toString());
        assertEquals(5, drivers.size(), drivers.toString());
        assertTrue(
                precautions.containsAll(List.of("org.ohmstead.load", "org.ohmstead.thermal")), precautions.toString());
        for (String id : measurements) {
            Words show = Words.run("plugins", "show", id);
            assertEquals(0, show.exitCode(), show.err());
            assertTrue(show.out().contains("It needs a bench that can"), show.out());
        }
        assertTrue(Words.run("plugins", "show", "scpi").out().contains("supply.address"));
    }
}
