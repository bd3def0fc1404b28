// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

/** A made-up project with a plan of any length. */
final class FakeProject {
    static final String REVISION = "cd".repeat(32);

    private FakeProject() {}

    static Project ofSteps(int count) {
        Amplifier amplifier = new Amplifier(
                "Made-up Workshop",
                "M-1",
                "0001",
                2,
                SupplyType.UNREGULATED,
                List.of(new LowestLoad(Mode.STEREO, 2)),
                List.of(),
                OptionalDouble.empty(),
                List.of(),
                "");
        Bench bench = new Bench(
                "Bench 1",
                new Supply("Supply", 0, 16, 100),
                new Cable(35, 3, OptionalDouble.empty()),
                List.of(new Meter(
                        "m1",
                        MeterQuantity.OUTPUT_VOLTS,
                        "Recorder",
                        "",
                        new Accuracy(0.002, 0.01, 0.001, 0),
                        Optional.empty(),
                        Optional.empty(),
                        "")),
                List.of(),
                OptionalDouble.of(23));
        LoadBranch four = new LoadBranch(4, 0.004, 0, "");
        List<Step> plan = new ArrayList<>();
        for (int number = 1; number <= count; number++) {
            plan.add(new Step(
                    "s" + number,
                    Mode.STEREO,
                    "4ohm",
                    14.4,
                    new Stimulus.ContinuousSine(1000),
                    new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                    false));
        }
        return new Project(
                "Sample",
                amplifier,
                bench,
                List.of(new BenchLoad("4ohm", 4, List.of(four, four), 200)),
                plan,
                new SheetSettings("", "", 0.95, ""));
    }
}
