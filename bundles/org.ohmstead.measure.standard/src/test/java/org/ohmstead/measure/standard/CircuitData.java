// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

/** What the demo's circuit simulator found, and the made-up amplifier as the simulated bench is told of it. */
final class CircuitData {
    private static final Path FOLDER = Path.of("..", "..", "demo-data");

    /**
     * The netlist's own values: converter ratio 2.18 behind 0.24 ohm and 33 mF, 86 % efficiency, source 2 V RMS, feedback 28 times
     * behind an input divider of 27 / 29.2, 0.15 dB less in channel B, 18 milliohm outside the feedback. What the transistors leave of
     * the rail (volts and ohms) is set by the results at 8 and 2 ohm and 14.4 V; every other row is a prediction.
     */
    static final String[] BENCH = {
        "railRatio", "2.18", "railOhms", "0.24", "railSeconds", "0.00792", "efficiencyRatio", "0.86", "sourceVolts",
                "2",
        "gainDb", "28.26", "mismatchDb", "0.15", "outputOhms", "0.018", "saturationVolts", "1.735", "saturationOhms",
                "0.177",
        "kneeRatio", "0.004", "crossoverVolts", "0.004", "idleAmps", "0.67", "currentLimitAmps", "1000", "noiseVolts",
                "0.00025",
        "lowCornerHz", "0", "highCornerHz", "200000", "gainLossDb", "0", "railLossRatio", "0", "meterErrors", "false",
        "supplyLimitAmps", "200", "separationDb", "200"
    };

    private CircuitData() {}

    static List<Map<String, String>> endPoints() throws IOException {
        List<String> lines = Files.readAllLines(FOLDER.resolve("simulation").resolve("simulator-endpoints.csv"));
        String[] names = lines.get(0).split(",");
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < names.length; i++) {
                row.put(names[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    /** Level, supply volts and file of the recordings of a step, rising. */
    record Level(double driveDb, double supplyVolts, Path file) {}

    static List<Level> levels(String stepId) throws IOException {
        String list = Files.readString(FOLDER.resolve("recordings").resolve("recordings.json"));
        Matcher matcher = Pattern.compile("\"step\": \"" + stepId
                        + "\", \"file\": \"([^\"]+)\", \"driveDb\": ([-0-9.]+),.*\"supplyVolts\": ([0-9.]+)")
                .matcher(list);
        List<Level> levels = new ArrayList<>();
        while (matcher.find()) {
            levels.add(new Level(
                    Double.parseDouble(matcher.group(2)),
                    Double.parseDouble(matcher.group(3)),
                    FOLDER.resolve("recordings").resolve(matcher.group(1))));
        }
        return levels;
    }

    /** A step as a row of the simulator's table has it. */
    static Subject subject(Map<String, String> row) {
        double ohms = Double.parseDouble(row.get("loadOhms"));
        double frequencyHz = Double.parseDouble(row.get("frequencyHz"));
        Mode mode = row.get("channel").equals("bridge") ? Mode.BRIDGED : Mode.STEREO;
        Stimulus stimulus = row.get("stimulus").equals("burst")
                ? new Stimulus.ToneBurst(frequencyHz, 0.02, 0.5, -20)
                : new Stimulus.ContinuousSine(frequencyHz);
        String volts = row.get("step").replaceAll(".*-", "").replace('V', '.');
        Step step =
                new Step(row.get("step"), mode, "load", Double.parseDouble(volts), stimulus, TestBench.thd(0.01), true);
        Optional<LocalDate> day = Optional.of(LocalDate.of(2026, 1, 15));
        Accuracy exact = new Accuracy(0.001, 0, 0, 0);
        return new Subject(
                new Project(
                        "Made up",
                        new Amplifier(
                                "",
                                "L",
                                "",
                                2,
                                SupplyType.UNREGULATED,
                                List.of(),
                                List.of(),
                                OptionalDouble.empty(),
                                List.of(),
                                ""),
                        new Bench(
                                "",
                                new Supply("Supply", 0, 16, 200),
                                new Cable(35, 3, OptionalDouble.of(0.0055)),
                                List.of(
                                        new Meter("v", MeterQuantity.OUTPUT_VOLTS, "V", "", exact, day, day, ""),
                                        new Meter("s", MeterQuantity.SUPPLY_VOLTS, "V", "", exact, day, day, "")),
                                List.of(),
                                OptionalDouble.empty()),
                        List.of(new BenchLoad(
                                "load", ohms, Collections.nCopies(2, new LoadBranch(ohms, 0.001, 0, "")), 2000)),
                        List.of(step),
                        new SheetSettings("", "", 0.95, "")),
                step);
    }
}
