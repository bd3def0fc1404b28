// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.File;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.LogEntry;

/** A run whose process is told to end, as by Ctrl-C. */
class EndedRunTest {
    private static final String STEPS = "stereo-8ohm-11V5,stereo-8ohm-12V5,stereo-8ohm-13V5";

    @TempDir
    private Path folder;

    @Test
    @Timeout(180)
    void theBenchIsMadeSafeAndTheSameCommandGoesOn() throws Exception {
        Path project = BenchWords.project(folder);
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        classPath(),
                        RunChild.class.getName(),
                        "run",
                        project.toString(),
                        "--driver",
                        "simulated",
                        "--set",
                        "driver.realPace=true",
                        "--step",
                        STEPS)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader said = process.errorReader(StandardCharsets.UTF_8)) {
            String line = said.readLine();
            while (line != null && !line.contains("1/3")) {
                line = said.readLine();
            }
            assertTrue(line != null && line.contains("was measured"), "the first step is not said: " + line);
            // Into the second step, which takes some seconds.
            assertFalse(process.waitFor(1500, TimeUnit.MILLISECONDS));
            process.toHandle().destroy();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it must end by itself");
            List<String> rest = said.lines().toList();
            assertTrue(rest.stream().anyMatch(each -> each.contains("emergency stop was pressed")), rest.toString());
        }
        assertNotEquals(0, process.exitValue());
        List<LogEntry> entries = BenchWords.log(project);
        assertEquals(
                List.of("R0001", "F0001", "N0001"),
                entries.stream().map(LogEntry::id).toList());
        String note = entries.get(2).note().orElseThrow().text();
        assertTrue(note.contains("stereo-8ohm-12V5") && note.contains("emergency stop"), note);
        BenchWords again = BenchWords.run(
                new BuiltPlugins(), "run", project.toString(), "--driver", "simulated", "--step", STEPS, "--json");
        assertEquals(0, again.exitCode(), again.err());
        JsonNode items = again.json().get("items");
        assertFalse(items.get(0).get("triedNow").asBoolean());
        assertTrue(items.get(1).get("triedNow").asBoolean());
        assertEquals("done", items.get(2).get("status").asText());
    }

    /** The class path of this test, whoever runs it. */
    static String classPath() throws URISyntaxException {
        if (!(RunChild.class.getClassLoader() instanceof URLClassLoader loader)) {
            return System.getProperty("java.class.path");
        }
        List<String> places = new ArrayList<>();
        for (URL url : loader.getURLs()) {
            places.add(Path.of(url.toURI()).toString());
        }
        return String.join(File.pathSeparator, places);
    }
}
