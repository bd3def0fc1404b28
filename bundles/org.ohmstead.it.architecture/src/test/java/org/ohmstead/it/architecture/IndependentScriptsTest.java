// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The demo's captures are what their provenance says: a second analysis in Python (NumPy) agrees with the simulator's table, and the
 * simulator (ngspice) still gives the figures in it. The launcher brings both programs before it runs the tests.
 */
class IndependentScriptsTest {
    private static final String PYTHON = "/usr/bin/python3";

    @BeforeAll
    static void needsTheirPrograms() throws Exception {
        assumeTrue(succeeds(PYTHON, "-c", "import numpy, scipy"), "python3-numpy and python3-scipy are not installed");
        assumeTrue(succeeds("ngspice", "--version"), "ngspice is not installed");
    }

    @Test
    void aSecondAnalysisAgreesWithTheSimulatorsTable() throws Exception {
        Result result = run(PYTHON, "-B", script("check_recordings.py"));
        assertEquals(0, result.exitCode(), result.output());
        assertTrue(result.output().contains(" 0 off"), result.output());
    }

    @Test
    void theSimulatorStillGivesTheSame() throws Exception {
        Result result = run(PYTHON, "-B", script("repeat_level.py"), "stereo-4ohm-14V4-1kHz-L08.wav");
        assertEquals(0, result.exitCode(), result.output());
        assertTrue(result.output().contains("within 0.1 % of the table"), result.output());
    }

    private static String script(String name) {
        return DemoData.path("simulation").resolve(name).toString();
    }

    private record Result(int exitCode, String output) {}

    private static Result run(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(words));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(10, TimeUnit.MINUTES), "still running: " + command);
        return new Result(process.exitValue(), output);
    }

    private static boolean succeeds(String... words) throws InterruptedException {
        try {
            return run(words).exitCode() == 0;
        } catch (IOException e) {
            System.getLogger("test").log(System.Logger.Level.INFO, "not there: " + words[0], e);
            return false;
        }
    }
}
