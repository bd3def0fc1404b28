// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.Cable;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Repeatability;
import org.ohmstead.model.Rest;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.SinkSize;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;

/** A project and a reading in which every component has a value and every kind of stimulus and end point occurs. */
final class Samples {
    private Samples() {}

    static Project project() {
        return new Project(
                "Kestrel 2 \u00d7 90",
                amplifier(),
                bench(),
                List.of(
                        new BenchLoad(
                                "4ohm",
                                4,
                                List.of(
                                        new LoadBranch(4.02, 0.005, 2.5e-7, "8R2||8R2", 0.004, 0.0015),
                                        new LoadBranch(3.98, 0.005, 0, "", 0.006, 0.0025)),
                                300),
                        new BenchLoad("2ohm", 2, List.of(new LoadBranch(2.01, 0.004, 1e-6, "", 0.008, 0.001)), 600)),
                List.of(
                        step("s1", new Stimulus.ContinuousSine(1000), limit(DistortionMeasure.THD_F), false),
                        step("s2", new Stimulus.ToneBurst(1000, 0.02, 0.5, -20), new EndPoint.ClippingOnset(), true),
                        step("s3", new Stimulus.ContinuousSine(100), new EndPoint.FixedLevel(-6.25), false),
                        step("s4", new Stimulus.ContinuousSine(1000), limit(DistortionMeasure.THD_PLUS_NOISE_R), false),
                        step("s5", new Stimulus.ContinuousSine(1000), limit(DistortionMeasure.THD_R), false)),
                new SheetSettings(
                        "Bench room",
                        "N. N.",
                        0.95,
                        "Line one.\nLine \"two\".",
                        Optional.of(new VerdictRule(VerdictKind.GUARDED_REJECTION, 0.025)),
                        new SheetLayout(
                                SheetDesign.HANDOUT,
                                PaperSize.LETTER,
                                "1 Example Street\nExampletown",
                                "lab@example.org",
                                "Not accredited.",
                                "sheets/logo.svg",
                                List.of("../heron.ohmstead"),
                                List.of("2024", "2025.."))),
                List.of(new SetAside("R0003", "load lead was loose"), new SetAside("R0007", "amplifier still cold")),
                heat(),
                List.of(
                        new CheckStandard(
                                "ten",
                                "Resistor of 10 \u03a9",
                                "",
                                CheckStandard.POWER,
                                "",
                                "W",
                                20,
                                0.01,
                                OptionalDouble.of(10.004),
                                OptionalDouble.of(0.003),
                                1),
                        new CheckStandard(
                                "golden",
                                "Amplifier that stays",
                                "s1",
                                "dampingFactor",
                                "A",
                                "",
                                8,
                                0.05,
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                0)),
                Optional.of(new SharedLog("db.example.org", 5433, "lab", "bench-4", "lab-root.pem")));
    }

    private static HeatData heat() {
        return new HeatData(
                new AmplifierHeat(
                        OutputClass.CLASS_AB,
                        OptionalDouble.of(29.5),
                        OptionalDouble.of(14.4),
                        Optional.of(new Range(0.82, 0.9)),
                        Optional.of(Range.of(12.5)),
                        Optional.of(new Range(0.55, 0.7)),
                        Optional.of(new Range(1800, 2400)),
                        Optional.of(new Range(0, 0.3)),
                        OptionalDouble.of(150),
                        OptionalDouble.of(80),
                        Optional.of(new SinkSize(0.25, 0.06, 12, 0.03, 0.002, 0.85))),
                new SupplyLimits(
                        true,
                        OptionalDouble.of(0.006),
                        OptionalDouble.of(45),
                        OptionalDouble.of(70),
                        OptionalDouble.of(0.0125)),
                new Pacing(15, 90, 150, 8, 6, 0.15, true, List.of(new Rest("s2", 120), new Rest("s4", 30.5))));
    }

    private static EndPoint limit(DistortionMeasure measure) {
        return new EndPoint.DistortionLimit(0.01, measure);
    }

    private static Step step(String id, Stimulus stimulus, EndPoint endPoint, boolean confirmed) {
        return new Step(id, Mode.STEREO, "4ohm", 13.5, stimulus, endPoint, confirmed);
    }

    private static Amplifier amplifier() {
        return new Amplifier(
                "Example works",
                "Kestrel",
                "0042",
                2,
                SupplyType.UNREGULATED,
                List.of(new LowestLoad(Mode.STEREO, 2), new LowestLoad(Mode.BRIDGED, 4)),
                List.of(new Fuse(30, "blade", "on the amplifier"), new Fuse(40, "", "")),
                OptionalDouble.of(0.6),
                List.of(
                        new Rating("r1", PowerKind.CONTINUOUS, Mode.STEREO, 4, 90, 14.4, 0.01, 1000, "2 x 90 W"),
                        new Rating("r2", PowerKind.BURST, Mode.BRIDGED, 4, 260, 14.4, 0.01, 1000, "")),
                "No notes.",
                Optional.of(new Price(249.9, "EUR", LocalDate.of(2025, 11, 3))));
    }

    private static Bench bench() {
        return new Bench(
                "Room 4",
                new Supply("Bench supply", 10, 16, 60),
                new Cable(25, 3, OptionalDouble.of(0.0021)),
                List.of(
                        new Meter(
                                "m1",
                                MeterQuantity.OUTPUT_VOLTS,
                                "Recorder",
                                "S1",
                                new Accuracy(0.005, 0.001, 0, 0),
                                Optional.of(LocalDate.of(2025, 6, 1)),
                                Optional.of(LocalDate.of(2026, 6, 1)),
                                "C-17",
                                new MeterStability(0.0004, 2.05, 0.0003, 0.00005, 19, 27.5)),
                        new Meter(
                                "m2",
                                MeterQuantity.TEMPERATURE_CELSIUS,
                                "Thermometer",
                                "",
                                new Accuracy(0, 1, 0.1, 2),
                                Optional.empty(),
                                Optional.empty(),
                                "")),
                List.of(
                        new Part("8R2", 8.2, 0.05, 100, 25, 250, Mounting.HEAT_SINK_WITH_FAN, 4)
                                .withTraits(new PartTraits(
                                        true,
                                        OptionalDouble.of(1e-4),
                                        OptionalDouble.of(5e-6),
                                        OptionalDouble.of(1.2),
                                        OptionalDouble.of(0.9),
                                        Optional.of(new PulseRule(5, 5)))),
                        new Part("0R47", 0.47, 0.05, 50, 25, 250, Mounting.FREE_AIR, 2)),
                OptionalDouble.of(22.5),
                Optional.of(new Repeatability(0.0021, 9, "ten powers on 2026-02-27")));
    }

    static Reading reading() {
        String hash = "ab".repeat(32);
        return new Reading(
                "s1",
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                Instant.parse("2026-03-02T09:14:05.250Z"),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                List.of(new ChannelReading(
                        "A",
                        EndPointOutcome.REACHED,
                        4.02,
                        71.0 / 0.9,
                        0.1 + 0.2,
                        17.8,
                        999.9999999999999,
                        0.01,
                        13.36,
                        OptionalDouble.of(17.52),
                        List.of(
                                new UncertaintyPart("output volts meter", 1.0 / 3.0, true),
                                new UncertaintyPart(
                                        "load",
                                        0.02,
                                        true,
                                        PartShape.RECTANGULAR,
                                        OptionalDouble.of(9.5),
                                        Optional.of(BudgetInput.LOAD_OHMS))),
                        List.of(new SweepPoint(
                                -3, 17.5, 76, 2.5e-7, 0.0031, true, 13.4, OptionalDouble.of(17.1), hash)),
                        List.of(new HarmonicFigure(2, 1e-21), new HarmonicFigure(3, 0.009)),
                        List.of(new PartCorrelation("output volts meter", "load", -0.25)))),
                new Provenance(
                        "cd".repeat(32),
                        "power-at-end-point",
                        "0.1.0",
                        "0.1.0",
                        "N. N.",
                        List.of(new InstrumentUsed(
                                "m1",
                                MeterQuantity.OUTPUT_VOLTS,
                                "Recorder",
                                Optional.of(LocalDate.of(2025, 6, 1)),
                                true)),
                        List.of(new CaptureUsed(hash, "a.wav", List.of(50.0, 49.9))),
                        Optional.of(new Specimen("Example works Kestrel", "0042", "Room 4"))),
                List.of("The supply sagged by 0.4 V.", "Tab\there, \u20ac and \ud83d\ude00."));
    }
}
