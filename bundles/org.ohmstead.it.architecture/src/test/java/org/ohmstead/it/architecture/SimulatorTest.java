// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.WaveformAnalyzer;

/**
 * What the demo's captures show, against the circuit simulator's own figures of the same runs: RMS by its {@code meas}, distortion by
 * its {@code fourier} analysis with harmonics up to the 20th. The simulator (ngspice) knows nothing of this software; the captures
 * are its waveforms with noise, hum and an offset added, filtered and sampled. See demo-data/README.md.
 */
class SimulatorTest {
    private static final double POWER_TOLERANCE = 0.005;
    private static final double DISTORTION_TOLERANCE = 0.02;
    /**
     * The rails sag during a burst, so clipping sets in towards its end, and the distortion depends on which cycles are looked at: the
     * simulator's table leaves out the first and the last cycle, the analysis does not. Just below the onset of clipping, where only
     * the last cycles are touched, the two have little in common, so bursts are compared from 0.5 % on.
     */
    private static final double BURST_DISTORTION_TOLERANCE = 0.1;
    /** Below this the added noise and hum, which the simulator does not have, are no longer small beside the harmonics. */
    private static final double LEAST_DISTORTION_RATIO = 0.001;

    private static final double LEAST_BURST_DISTORTION_RATIO = 0.005;

    private static final List<Map<String, String>> RESULTS = new ArrayList<>();

    @BeforeAll
    static void readTheSimulatorsTable() throws IOException {
        RESULTS.addAll(DemoData.table("simulation/simulator-results.csv"));
        assertTrue(RESULTS.size() > 400, "the simulator's table is short: " + RESULTS.size());
    }

    static Stream<String> steps() throws IOException {
        return DemoData.table("simulation/simulator-results.csv").stream()
                .map(row -> row.get("step"))
                .distinct();
    }

    @ParameterizedTest
    @MethodSource("steps")
    void agreesInPowerAndDistortion(String step) throws Exception {
        int compared = 0;
        for (Map<String, String> row : RESULTS) {
            if (!row.get("step").equals(step)) {
                continue;
            }
            ChannelAnalysis analysis = analyze(row);
            double expectedWatts = Double.parseDouble(row.get("powerWatts"));
            double powerWatts =
                    step.startsWith("burst-") ? analysis.burst().orElseThrow().powerWatts() : analysis.powerWatts();
            String where = row.get("file") + " " + row.get("channel");
            assertEquals(expectedWatts, powerWatts, POWER_TOLERANCE * expectedWatts, where);
            double expectedThd = Double.parseDouble(row.get("thdFPercent")) / 100;
            boolean burst = step.startsWith("burst-");
            if (expectedThd >= (burst ? LEAST_BURST_DISTORTION_RATIO : LEAST_DISTORTION_RATIO)) {
                double tolerance = burst ? BURST_DISTORTION_TOLERANCE : DISTORTION_TOLERANCE;
                assertEquals(expectedThd, analysis.thdFRatio(), tolerance * expectedThd, where);
            }
            compared++;
        }
        assertTrue(compared >= 5, step + " has only " + compared + " rows");
    }

    @Test
    void findsTheClippedOnesAndOnlyThose() throws Exception {
        for (Map<String, String> row : RESULTS) {
            double thdPercent = Double.parseDouble(row.get("thdFPercent"));
            if (row.get("step").matches("(stereo|bridged)-8ohm.*")) {
                boolean clipped = analyze(row).clipping().clipped();
                if (thdPercent > 2) {
                    assertTrue(clipped, row.toString());
                } else if (thdPercent < 0.1) {
                    assertTrue(!clipped, row.toString());
                }
            }
        }
    }

    private static ChannelAnalysis analyze(Map<String, String> row) throws Exception {
        boolean bridged = row.get("step").startsWith("bridged");
        Capture capture =
                CaptureFile.read(DemoData.path("recordings/" + row.get("file")), new double[] {bridged ? 100 : 50});
        int channel = row.get("channel").equals("B") ? 1 : 0;
        AnalysisSettings settings = AnalysisSettings.forResistance(Double.parseDouble(row.get("loadOhms")));
        return WaveformAnalyzer.analyze(capture.channels().get(channel), settings);
    }
}
