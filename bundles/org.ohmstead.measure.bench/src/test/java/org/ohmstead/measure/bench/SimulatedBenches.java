// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.WaveformAnalyzer;

/** The simulated bench, opened and made ready for tests. */
final class SimulatedBenches {
    private static final Instant START = Instant.parse("2026-03-02T09:00:00Z");
    static final Subject STEREO =
            Subjects.of(2, SupplyType.UNREGULATED, Mode.STEREO, Subjects.rating(4, 90), Subjects.rating(2, 165));

    static Bench open(Subject subject, String... settings) throws Exception {
        SimulatedBenchDriver driver = new SimulatedBenchDriver(Clock.fixed(START, ZoneOffset.UTC));
        Map<String, String> given = new HashMap<>();
        for (int i = 0; i < settings.length; i += 2) {
            given.put(settings[i], settings[i + 1]);
        }
        return driver.open(subject, Settings.of(driver.info().settings(), given));
    }

    static Bench ready(Subject subject, String... settings) throws Exception {
        Bench bench = open(subject, settings);
        bench.connect(subject.step().mode(), subject.load());
        bench.setSupplyVolts(subject.step().supplyVolts());
        return bench;
    }

    static ChannelAnalysis analysis(Acquisition acquisition, int channel, double ohms) throws Exception {
        return WaveformAnalyzer.analyze(
                acquisition.output().channels().get(channel),
                AnalysisSettings.forResistance(ohms).withFrequencyHz(1000));
    }

    private SimulatedBenches() {}
}
