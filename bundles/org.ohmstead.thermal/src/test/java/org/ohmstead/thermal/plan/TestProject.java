// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.model.SupplyType;

/** A made-up amplifier with rails of 30 V at 14.4 V, on a bench with loads of 8, 4 and 2 ohm. */
final class TestProject {
    static final Part PART = new Part("8R", 8, 0.01, 250, 25, 250, Mounting.HEAT_SINK_WITH_FAN, 16);

    /** Every network is made of so many parts side by side as its value says. */
    static final PartSharing SHARING = (stock, branch) -> {
        int count = (int) Math.round(8 / branch.ohms());
        return branch.network().isEmpty()
                ? List.of()
                : Collections.nCopies(count, new PartShare("8R", 8, 1.0 / count, Optional.of(stock.get(0))));
    };

    static final Stimulus.ContinuousSine TONE = new Stimulus.ContinuousSine(1000);

    private TestProject() {}

    static Project sound() {
        return new Project(
                "Made-up",
                new Amplifier(
                        "Made-up Workshop",
                        "M-2",
                        "",
                        2,
                        SupplyType.UNREGULATED,
                        List.of(),
                        List.of(new Fuse(40, "blade", ""), new Fuse(40, "blade", "")),
                        OptionalDouble.empty(),
                        List.of(
                                rating("r8", Mode.STEREO, 8, 50, 14.4),
                                rating("r4", Mode.STEREO, 4, 90, 14.4),
                                rating("r2", Mode.STEREO, 2, 150, 14.4)),
                        ""),
                new Bench(
                        "",
                        new Supply("Supply", 0, 16, 100),
                        new Cable(35, 4, OptionalDouble.empty()),
                        List.of(),
                        List.of(PART),
                        OptionalDouble.of(25)),
                List.of(load("8ohm", 8), load("4ohm", 4), load("2ohm", 2)),
                plan(),
                new SheetSettings("", "", 0.95, ""),
                List.of(),
                new HeatData(facts(), SupplyLimits.NONE, Pacing.USUAL));
    }

    static AmplifierHeat facts() {
        return new AmplifierHeat(
                OutputClass.CLASS_AB,
                OptionalDouble.of(30),
                OptionalDouble.of(14.4),
                Optional.of(Range.of(1)),
                Optional.of(Range.of(0)),
                Optional.of(Range.of(0.5)),
                Optional.of(new Range(2500, 3500)),
                Optional.of(Range.of(0.1)),
                OptionalDouble.of(150),
                OptionalDouble.of(80),
                Optional.empty());
    }

    static Rating rating(String id, Mode mode, double ohms, double watts, double volts) {
        return new Rating(id, PowerKind.CONTINUOUS, mode, ohms, watts, volts, 0.01, 1000, "");
    }

    static BenchLoad load(String id, double ohms) {
        LoadBranch branch = new LoadBranch(ohms, 0.01, 0, "parts side by side");
        return new BenchLoad(id, ohms, List.of(branch, branch), 600);
    }

    static Step step(String id, Mode mode, String load, double volts) {
        return new Step(
                id, mode, load, volts, TONE, new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F), false);
    }

    static List<Step> plan() {
        List<Step> plan = new ArrayList<>();
        for (String load : List.of("2ohm", "4ohm", "8ohm")) {
            for (double volts : new double[] {14.4, 13.8, 12.6, 11}) {
                plan.add(step("stereo-" + load + "-" + volts, Mode.STEREO, load, volts));
            }
        }
        for (String load : List.of("8ohm", "4ohm")) {
            for (double volts : new double[] {11, 12.6, 13.8, 14.4}) {
                plan.add(step("bridged-" + load + "-" + volts, Mode.BRIDGED, load, volts));
            }
        }
        return plan;
    }

    static Project withFacts(Project project, AmplifierHeat facts) {
        return project.withHeat(project.heat().withAmplifier(facts));
    }

    static Project withPacing(Project project, double stepSeconds, double marginKelvin, boolean warmUp) {
        Pacing usual = Pacing.USUAL;
        return project.withHeat(project.heat()
                .withPacing(new Pacing(
                        stepSeconds,
                        usual.loadChangeSeconds(),
                        usual.modeChangeSeconds(),
                        usual.supplyChangeSeconds(),
                        marginKelvin,
                        usual.currentMarginRatio(),
                        warmUp,
                        List.of())));
    }

    /** Returns one with a single step. */
    static Project only(Step step) {
        return sound().withPlan(List.of(step));
    }
}
