// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A made-up project without problems. */
final class SampleProject {
    private SampleProject() {}

    static Project sound() {
        Accuracy accuracy = new Accuracy(0.002, 0.01, 0.001, 0);
        Amplifier amplifier = new Amplifier(
                "Made-up Workshop",
                "M-1",
                "0001",
                2,
                SupplyType.UNREGULATED,
                List.of(new LowestLoad(Mode.STEREO, 2), new LowestLoad(Mode.BRIDGED, 4)),
                List.of(new Fuse(30, "blade", "on the amplifier")),
                OptionalDouble.empty(),
                List.of(new Rating("r1", PowerKind.CONTINUOUS, Mode.STEREO, 4, 60, 14.4, 0.01, 1000, "")),
                "",
                Optional.of(new Price(249, "EUR", LocalDate.of(2026, 2, 1))));
        Bench bench = new Bench(
                "Bench 1",
                new Supply("Supply", 0, 16, 100),
                new Cable(35, 3, OptionalDouble.empty()),
                List.of(
                        new Meter(
                                "m1",
                                MeterQuantity.OUTPUT_VOLTS,
                                "Recorder",
                                "",
                                accuracy,
                                Optional.of(LocalDate.of(2026, 1, 15)),
                                Optional.of(LocalDate.of(2027, 1, 15)),
                                "",
                                new MeterStability(0.0004, 2.1, 0.0003, 0.00005, 19, 27)),
                        new Meter(
                                "m2",
                                MeterQuantity.SUPPLY_VOLTS,
                                "Meter",
                                "",
                                accuracy,
                                Optional.empty(),
                                Optional.empty(),
                                "")),
                List.of(new Part("8R", 8, 0.05, 100, 25, 250, Mounting.HEAT_SINK, 4)
                        .withTraits(new PartTraits(
                                true,
                                OptionalDouble.of(1e-4),
                                OptionalDouble.of(5e-6),
                                OptionalDouble.of(1.2),
                                OptionalDouble.of(0.9),
                                Optional.of(new PulseRule(5, 5))))),
                OptionalDouble.of(23),
                Optional.of(new Repeatability(0.002, 9, "ten powers in a row")));
        LoadBranch four = new LoadBranch(4.01, 0.004, 0, "8R||8R");
        LoadBranch two = new LoadBranch(2.01, 0.004, 0, "");
        return new Project(
                "Sample",
                amplifier,
                bench,
                List.of(
                        new BenchLoad("4ohm", 4, List.of(four, four), 200),
                        new BenchLoad("2ohm", 2, List.of(two, two), 200)),
                List.of(new Step(
                        "s1",
                        Mode.STEREO,
                        "4ohm",
                        14.4,
                        new Stimulus.ContinuousSine(1000),
                        new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                        false)),
                new SheetSettings("", "", 0.95, "", Optional.of(new VerdictRule(VerdictKind.GUARDED_ACCEPTANCE, 0.05))),
                List.of(new SetAside("R0003", "load lead was loose")),
                heat(),
                List.of(new CheckStandard(
                        "ten",
                        "Resistor of 10 ohm at 10 V",
                        "",
                        CheckStandard.POWER,
                        "",
                        "W",
                        20,
                        0.01,
                        OptionalDouble.of(10),
                        OptionalDouble.of(0.02),
                        1)),
                Optional.of(new SharedLog("localhost", 5432, "lab", "bench-1", "lab.pem")));
    }

    private static HeatData heat() {
        return new HeatData(
                new AmplifierHeat(
                        OutputClass.CLASS_AB,
                        OptionalDouble.of(30),
                        OptionalDouble.of(14.4),
                        Optional.of(new Range(0.8, 0.9)),
                        Optional.of(new Range(10, 15)),
                        Optional.of(new Range(0.5, 0.7)),
                        Optional.of(new Range(1800, 2500)),
                        Optional.of(new Range(0.2, 0.3)),
                        OptionalDouble.of(150),
                        OptionalDouble.of(80),
                        Optional.of(new SinkSize(0.25, 0.06, 12, 0.03, 0.002, 0.85))),
                new SupplyLimits(
                        true,
                        OptionalDouble.of(0.006),
                        OptionalDouble.of(45),
                        OptionalDouble.of(70),
                        OptionalDouble.of(0.0125)),
                new Pacing(15, 90, 150, 8, 6, 0.15, true, List.of(new Rest("s1", 60))));
    }
}
