// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.function.Executable;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

/** Makes a project to measure, and opens benches for it. */
final class BenchFixture {
    static final ScpiBenchDriver DRIVER = new ScpiBenchDriver();

    static Subject subject(Mode mode) {
        LoadBranch four = new LoadBranch(4, 0.004, 0, "");
        Step step = new Step(
                "s1",
                mode,
                "4ohm",
                14.4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                false);
        Project project = new Project(
                "Sample",
                new Amplifier(
                        "",
                        "M-1",
                        "",
                        2,
                        SupplyType.UNREGULATED,
                        List.of(),
                        List.of(),
                        OptionalDouble.empty(),
                        List.of(),
                        ""),
                new org.ohmstead.model.Bench(
                        "Bench 1",
                        new Supply("Supply", 0, 15, 40),
                        new Cable(35, 3, OptionalDouble.empty()),
                        List.of(),
                        List.of(),
                        OptionalDouble.empty()),
                List.of(
                        new BenchLoad("4ohm", 4, List.of(four, four), 200),
                        new BenchLoad("8ohm", 8, List.of(four), 200)),
                List.of(step),
                new SheetSettings("", "", 0.95, ""));
        return new Subject(project, step);
    }

    static Bench open(Map<String, String> settings) throws Exception {
        return open(settings, Mode.STEREO);
    }

    static Bench open(Map<String, String> settings, Mode mode) throws Exception {
        return DRIVER.open(subject(mode), Settings.of(DRIVER.info().settings(), settings));
    }

    static String refusal(Executable what) {
        MeasurementException refused = assertThrows(MeasurementException.class, what);
        assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
        return refused.getMessage();
    }

    private BenchFixture() {}
}
