// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.RecordingSource;
import org.ohmstead.measure.bench.ReplayedBenchDriver;
import org.ohmstead.model.Reading;

class ReplayedPowerTest {
    /** The circuit simulator was driven to 1 % without knowing the recorded levels, within 0.3 % of the limit. */
    @ParameterizedTest
    @CsvSource({"stereo-4ohm-14V4,50,0.003", "bridged-4ohm-12V5,100,0.003", "burst-stereo-2ohm-12V5,50,0.006"})
    void findsThePowerInRecordingsThatArePlayedBack(String step, double voltsPerFullScale, double tolerance)
            throws Exception {
        Map<String, String> row = CircuitData.endPoints().stream()
                .filter(each -> each.get("step").equals(step))
                .findFirst()
                .orElseThrow();
        Subject subject = CircuitData.subject(row);
        List<CircuitData.Level> levels = CircuitData.levels(step);
        List<RecordingSource.Recorded> recorded = levels.stream()
                .map(level -> new RecordingSource.Recorded(
                        level.file(),
                        level.driveDb(),
                        List.of(voltsPerFullScale),
                        level.supplyVolts(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Instant.parse("2026-03-02T09:14:05Z")))
                .toList();
        ReplayedBenchDriver driver = new ReplayedBenchDriver((folder, whose) -> recorded);
        String levelsDb =
                levels.stream().map(level -> Double.toString(level.driveDb())).collect(Collectors.joining(", "));
        try (Bench bench = driver.open(subject, Settings.defaults(driver.info().settings()))) {
            bench.connect(subject.step().mode(), subject.load());
            bench.setSupplyVolts(subject.step().supplyVolts());
            Reading reading = TestBench.run(
                            new PowerAtEndPoint(),
                            subject,
                            bench,
                            new TestBench.Heard(),
                            "levels",
                            levelsDb,
                            "settleSeconds",
                            "0")
                    .power()
                    .orElseThrow();
            double watts = Double.parseDouble(row.get("powerWatts"));
            assertEquals(watts, reading.channels().get(0).powerWatts(), tolerance * watts);
            assertEquals(levels.size(), reading.channels().get(0).sweep().size());
            bench.setSupplyVolts(subject.step().supplyVolts());
            // A search asks for levels that nobody recorded.
            assertThrows(
                    MeasurementException.class,
                    () -> TestBench.run(new PowerAtEndPoint(), subject, bench, new TestBench.Heard()));
        }
    }
}
