// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;

/**
 * A made-up sheet. Nothing in it was ever measured: the powers come from the closed form of an output stage that saturates,
 * V_peak = (g V_supply - V_s) R / (R + R_s) with g = 2.8, V_s = 3 V, R_s = 0.1 ohm, channel B being 1.5 % weaker.
 */
public final class SampleSheet {
    static final Instant START = Instant.parse("2026-03-02T09:00:00Z");
    static final Instant PRODUCED = Instant.parse("2026-03-03T08:30:00Z");
    static final String HEAD_HASH = "9f2c4e7ab1d05386".repeat(4);
    static final EndPoint ONE_PERCENT = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);
    static final Stimulus TONE = new Stimulus.ContinuousSine(1000);
    static final Stimulus BURST = new Stimulus.ToneBurst(1000, 0.02, 0.5, -20);
    static final int LEVELS = 10;

    private static final double[] VOLTS = {11, 12, 12.6, 13.8, 14.4};

    private final List<Step> plan = new ArrayList<>();
    private final List<SheetReading> readings = new ArrayList<>();
    private String model = "Sample 2.100";
    private String notes = "Made-up figures for a test of the sheet.";
    private String wording = "2 x 150 W into 4 ohm";
    private String firstChannel = "A";

    /** Returns the sample as it is. */
    public static SampleSheet plain() {
        return new SampleSheet();
    }

    /** Returns a sample whose texts are all the given one. */
    SampleSheet withTexts(String text) {
        model = text;
        notes = text;
        wording = text;
        firstChannel = text;
        return this;
    }

    /** Returns the sheet. */
    public ResultsSheet build() {
        fill();
        List<Reading> standing = readings.stream()
                .filter(SheetReading::stands)
                .map(SheetReading::reading)
                .toList();
        var curves = LoadCurves.fit(standing);
        return new ResultsSheet(
                project(),
                readings,
                curves,
                RatingJudge.judge(ratings(), curves, 0.95),
                new LogStamp(HEAD_HASH, readings.size() + 1, true),
                "0.1.0",
                PRODUCED,
                List.of(new Problem(
                        Severity.WARNING,
                        "$.bench.meters[2]",
                        "The calibration of \"" + model + "\" ran out on 2026-01-31.",
                        "Have it calibrated, or use another meter.")));
    }

    private void fill() {
        for (double ohms : new double[] {8, 4, 2}) {
            for (double volts : VOLTS) {
                add(Mode.STEREO, ohms, volts, TONE, Optional.empty());
            }
        }
        for (double ohms : new double[] {8, 4}) {
            for (double volts : VOLTS) {
                add(Mode.BRIDGED, ohms, volts, TONE, Optional.empty());
            }
        }
        for (double ohms : new double[] {4, 2}) {
            for (double volts : new double[] {12.6, 13.8, 14.4}) {
                add(Mode.STEREO, ohms, volts, BURST, Optional.empty());
            }
        }
        add(Mode.STEREO, 4, 14.4, TONE, Optional.of("A probe had slipped off. " + notes));
        add(Mode.BRIDGED, 4, 14.4, BURST, Optional.empty());
        add(Mode.SINGLE, 4, 14.4, TONE, Optional.empty());
    }

    private void add(Mode mode, double ohms, double volts, Stimulus stimulus, Optional<String> voidReason) {
        int number = readings.size() + 1;
        String load = "L" + (int) ohms + (mode == Mode.STEREO ? "s" : "b");
        String step = String.format(Locale.ROOT, "s%02d", number);
        plan.add(new Step(step, mode, load, volts, stimulus, ONE_PERCENT, false));
        List<ChannelReading> channels = new ArrayList<>();
        if (mode == Mode.STEREO) {
            channels.add(channel(firstChannel, mode, ohms, volts, stimulus, 1));
            channels.add(channel("B", mode, ohms, volts, stimulus, 0.985));
        } else {
            channels.add(channel(mode == Mode.BRIDGED ? "A+B" : "A", mode, ohms, volts, stimulus, 1));
        }
        Reading reading = new Reading(
                step,
                mode,
                load,
                ohms,
                stimulus,
                ONE_PERCENT,
                START.plusSeconds(240L * number),
                new Conditions(OptionalDouble.of(23.4), OptionalDouble.of(31 + 0.7 * number)),
                channels,
                provenance(number),
                number == 3 ? List.of("The fan was running.") : List.of());
        readings.add(new SheetReading(String.format(Locale.ROOT, "%04d", number), reading, voidReason));
    }

    private static double closedForm(Mode mode, double ohms, double volts) {
        double channelOhms = mode == Mode.BRIDGED ? ohms / 2 : ohms;
        double peak = (2.8 * volts - 3) * channelOhms / (channelOhms + 0.1);
        return peak * peak / (2 * channelOhms) * (mode == Mode.BRIDGED ? 2 : 1);
    }

    private static ChannelReading channel(
            String name, Mode mode, double ohms, double volts, Stimulus stimulus, double strength) {
        double burst = stimulus.powerKind() == PowerKind.BURST ? 1.12 : 1;
        double power = closedForm(mode, ohms, volts) * strength * burst;
        boolean lowerBound = mode == Mode.SINGLE;
        List<UncertaintyPart> parts = List.of(
                new UncertaintyPart("output volts meter", 0.008 * power, true),
                new UncertaintyPart("load resistance", 0.003 * power, true),
                new UncertaintyPart("place of the end point between two levels", 0.001 * power, false),
                new UncertaintyPart("supply volts meter", 0.0012 * power, true));
        double uncertainty = Math.sqrt(parts.stream()
                .mapToDouble(part -> part.standardUncertaintyWatts() * part.standardUncertaintyWatts())
                .sum());
        return new ChannelReading(
                name,
                lowerBound ? EndPointOutcome.NOT_REACHED : EndPointOutcome.REACHED,
                ohms * 1.002,
                power,
                uncertainty,
                Math.sqrt(power * ohms),
                1000,
                lowerBound ? 0.0061 : 0.01,
                volts + 0.013,
                OptionalDouble.of(2 * power / volts / 0.62),
                parts,
                sweep(power, volts),
                harmonics(strength));
    }

    private static List<SweepPoint> sweep(double power, double volts) {
        List<SweepPoint> points = new ArrayList<>();
        for (int level = 0; level < LEVELS; level++) {
            double relativeDb = level < 6 ? -24 + 4 * level : -2 + 0.75 * (level - 6);
            double watts = power * Math.pow(10, relativeDb / 10);
            double distortion = 0.0004 + 0.0003 / (1 + watts) + 0.0096 * Math.pow(watts / power, 18);
            points.add(new SweepPoint(
                    relativeDb - 7,
                    Math.sqrt(watts * 4),
                    watts,
                    Math.min(distortion, 0.4),
                    Math.min(distortion * 1.1, 0.4),
                    relativeDb > 0,
                    volts - 0.01,
                    OptionalDouble.of(watts / volts / 0.5),
                    hash(level)));
        }
        return points;
    }

    private static List<HarmonicFigure> harmonics(double strength) {
        List<HarmonicFigure> figures = new ArrayList<>();
        for (int order = 2; order <= 10; order++) {
            double odd = order % 2 == 1 ? 1 : 0.08;
            figures.add(new HarmonicFigure(order, 0.011 * odd * strength / Math.pow(order - 1, 1.3)));
        }
        return figures;
    }

    private static String hash(int number) {
        try {
            byte[] text = Integer.toString(number).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Provenance provenance(int number) {
        return new Provenance(
                hash(999),
                "power",
                "1.0",
                "0.1.0",
                "R. Operator",
                List.of(new InstrumentUsed(
                        "m1", MeterQuantity.OUTPUT_VOLTS, "Recorder", Optional.of(LocalDate.of(2025, 9, 1)), false)),
                List.of(new CaptureUsed(hash(number), "step" + number + ".wav", List.of(50.0, 50.0))));
    }

    private List<Rating> ratings() {
        return List.of(
                new Rating("r1", PowerKind.CONTINUOUS, Mode.STEREO, 4, 150, 14.4, 0.01, 1000, wording),
                new Rating("r2", PowerKind.CONTINUOUS, Mode.STEREO, 8, 84, 14.4, 0.01, 1000, "2 x 84 W into 8 ohm"),
                new Rating("r3", PowerKind.CONTINUOUS, Mode.STEREO, 2, 350, 14.4, 0.01, 1000, "2 x 350 W into 2 ohm"),
                new Rating("r4", PowerKind.CONTINUOUS, Mode.BRIDGED, 4, 600, 14.4, 0.01, 1000, ""),
                new Rating("r5", PowerKind.BURST, Mode.STEREO, 2, 340, 14.4, 0.01, 1000, "dynamic 2 x 340 W"),
                new Rating("r6", PowerKind.CONTINUOUS, Mode.BRIDGED, 2, 900, 14.4, 0.01, 1000, "1 x 900 W, bridged"));
    }

    private Project project() {
        Amplifier amplifier = new Amplifier(
                "Sample Works",
                model,
                "S-0001",
                2,
                SupplyType.UNREGULATED,
                List.of(new LowestLoad(Mode.STEREO, 2), new LowestLoad(Mode.BRIDGED, 4)),
                List.of(new Fuse(40, "blade", "on the amplifier"), new Fuse(40, "blade", "on the amplifier")),
                OptionalDouble.empty(),
                ratings(),
                notes);
        return new Project(
                "Sample project",
                amplifier,
                bench(),
                List.of(load("L8s", 8, 2), load("L4s", 4, 2), load("L2s", 2, 2), load("L8b", 8, 1), load("L4b", 4, 1)),
                plan,
                new SheetSettings("Sample laboratory", "T. Technician", 0.95, notes));
    }

    private static BenchLoad load(String id, double ohms, int branches) {
        List<LoadBranch> list = new ArrayList<>();
        for (int branch = 0; branch < branches; branch++) {
            list.add(new LoadBranch(ohms * 1.002 + 0.004 * branch, ohms * 0.003, 2.2e-6, "8R2||8R2"));
        }
        return new BenchLoad(id, ohms, list, 500);
    }

    private static Bench bench() {
        return new Bench(
                "Bench 2",
                new Supply("Adjustable bench supply", 0, 16, 100),
                new Cable(35, 3.2, OptionalDouble.of(0.0021)),
                List.of(
                        meter("m1", MeterQuantity.OUTPUT_VOLTS, "Recorder, channels 1 and 2", 0.004, 0.01, 2026),
                        meter("m2", MeterQuantity.SUPPLY_VOLTS, "Bench multimeter", 0.0005, 0.002, 2026),
                        meter("m3", MeterQuantity.SUPPLY_AMPS, "Clamp meter", 0.015, 0.3, 2025)),
                List.of(),
                OptionalDouble.of(23));
    }

    private static Meter meter(
            String id, MeterQuantity quantity, String name, double ratio, double fixed, int dueYear) {
        return new Meter(
                id,
                quantity,
                name,
                "SN-" + id,
                new Accuracy(ratio, fixed, fixed / 10, 0),
                Optional.of(LocalDate.of(dueYear - 1, 9, 1)),
                Optional.of(LocalDate.of(dueYear, 9, 1)),
                "C-" + id);
    }
}
