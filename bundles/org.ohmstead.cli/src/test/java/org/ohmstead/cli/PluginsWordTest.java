// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;

class PluginsWordTest {
    private static JsonNode plugin(JsonNode document, String id) {
        for (JsonNode plugin : document.get("plugins")) {
            if (plugin.get("id").asText().equals(id)) {
                return plugin;
            }
        }
        throw new AssertionError("no plug-in " + id + " in " + document);
    }

    private static JsonNode named(JsonNode list, String id) {
        for (JsonNode each : list) {
            if (each.get("id").asText().equals(id)) {
                return each;
            }
        }
        throw new AssertionError("no " + id + " in " + list);
    }

    @Test
    void everyPluginIsListed() {
        BenchWords list = BenchWords.run(new BuiltPlugins(), "plugins");
        assertEquals(0, list.exitCode(), list.err());
        for (String id : new String[] {
            "org.ohmstead.bench.simulated",
            "org.ohmstead.power-at-end-point",
            "org.ohmstead.load",
            "org.ohmstead.thermal"
        }) {
            assertTrue(list.out().lines().anyMatch(line -> line.contains(id) && line.endsWith("in use")), list.out());
        }
    }

    @Test
    void settingsNeedsAndFiguresAreData() {
        JsonNode document =
                BenchWords.run(new BuiltPlugins(), "plugins", "--json").json();
        JsonNode power = plugin(document, "org.ohmstead.power-at-end-point");
        assertEquals("measurement", power.get("kind").asText());
        assertEquals("inUse", power.get("state").asText());
        assertEquals("WAVEFORM", named(power.get("needs"), "WAVEFORM").get("id").asText());
        JsonNode start = named(power.get("settings"), "startDb");
        assertEquals("number", start.get("type").asText());
        assertEquals("dB", start.get("unit").asText());
        assertEquals(-40, start.get("default").asDouble(), 0);
        assertEquals(-100, start.get("least").asDouble(), 0);
        assertEquals(0, start.get("most").asDouble(), 0);
        JsonNode figure = named(power.get("figures"), "power");
        assertEquals("W", figure.get("unit").asText());
        assertTrue(figure.get("perChannel").asBoolean());
        assertEquals(1200, power.get("longestSeconds").asDouble(), 0);
        JsonNode simulated = plugin(document, "org.ohmstead.bench.simulated");
        assertEquals("simulated", simulated.get("bench").asText());
        assertTrue(named(simulated.get("settings"), "fault").get("choices").size() > 3);
        assertEquals(
                "flag", named(simulated.get("settings"), "ideal").get("type").asText());
        assertEquals(
                "count", named(simulated.get("settings"), "seed").get("type").asText());
        assertEquals(
                "precaution",
                plugin(document, "org.ohmstead.thermal").get("kind").asText());
        assertEquals(0, document.get("problems").size());
    }

    @Test
    void oneIsToldInPlainWords() {
        BenchWords show = BenchWords.run(new BuiltPlugins(), "plugins", "show", "burst-power");
        assertEquals(0, show.exitCode(), show.err());
        for (String part : new String[] {
            "Burst power and dynamic headroom 1.0.0",
            "It follows CTA-490-A",
            "feed tone bursts in",
            "headroom",
            "-100 to 0 dB"
        }) {
            assertTrue(show.out().contains(part), show.out());
        }
        BenchWords bench = BenchWords.run(new BuiltPlugins(), "plugins", "show", "typed");
        assertTrue(bench.out().contains("capture files, volts and distortion, nothing"), bench.out());
        assertTrue(BenchWords.run(new BuiltPlugins(), "plugins", "show", "load")
                .out()
                .contains("--dry-run"));
        JsonNode data = BenchWords.run(new BuiltPlugins(), "plugins", "show", "gain", "--json")
                .json();
        assertEquals("org.ohmstead.gain", data.get("id").asText());
        BenchWords unknown = BenchWords.run(new BuiltPlugins(), "plugins", "show", "gone");
        assertEquals(3, unknown.exitCode());
        assertTrue(unknown.err().contains("There is no plug-in \"gone\""), unknown.err());
    }

    @Test
    void whatIsNotUsedIsSaidWithItsReason() {
        BuiltPlugins plugins = new BuiltPlugins()
                .with(catalog -> catalog.bindMeasurement(new Silent()))
                .with(catalog -> catalog.bindMeasurement(new FailingMeasurement("")))
                .with(catalog -> catalog.bindMeasurement(new FailingMeasurement("")));
        BenchWords list = BenchWords.run(plugins, "plugins");
        assertEquals(1, list.exitCode(), list.err());
        assertTrue(list.out().contains("Silent is not used, because it does not say what it is"), list.out());
        assertTrue(
                list.out().contains("is not used, because there is another with the id org.example.failing"),
                list.out());
        JsonNode problems = BenchWords.run(plugins, "plugins", "--json").json().get("problems");
        assertEquals(2, problems.size());
        for (JsonNode problem : problems) {
            assertTrue(problem.get("remedy").asText().endsWith("."), problem.toString());
        }
    }

    /** Does not say what it is. */
    private static final class Silent implements Measurement {
        @Override
        public MeasurementInfo info() {
            throw new IllegalStateException("no words");
        }

        @Override
        public Readiness readiness(Subject subject) {
            return new Readiness.Ready();
        }

        @Override
        public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress) {
            throw new IllegalStateException("never run");
        }
    }
}
