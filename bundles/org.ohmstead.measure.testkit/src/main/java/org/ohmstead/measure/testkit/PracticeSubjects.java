// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

/** Made-up subjects to measure. */
public final class PracticeSubjects {
    private static final EndPoint ONE_PERCENT = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);

    private PracticeSubjects() {}

    /** Returns an amplifier of two channels with a rating and all meters, at 14.4 V in stereo with 4 ohms and a 1 kHz sine. */
    public static Subject stereo() {
        return subject(2, Mode.STEREO, "4ohm", new Stimulus.ContinuousSine(1000), true);
    }

    /** Returns subjects of all kinds that a project may hold, those that few measurements suit among them. */
    public static List<Subject> various() {
        Stimulus sine = new Stimulus.ContinuousSine(1000);
        return List.of(
                stereo(),
                subject(2, Mode.BRIDGED, "4ohm", sine, true),
                subject(2, Mode.SINGLE, "8ohm", sine, true),
                subject(1, Mode.STEREO, "2ohm", sine, true),
                subject(1, Mode.BRIDGED, "4ohm", sine, false),
                subject(4, Mode.STEREO, "4ohm", new Stimulus.ToneBurst(1000, 0.02, 0.5, -20), true),
                subject(2, Mode.STEREO, "4ohm", sine.withFrequencyHz(20), false),
                subject(2, Mode.STEREO, "one", sine, false));
    }

    private static Subject subject(int channels, Mode mode, String loadId, Stimulus stimulus, boolean wellKnown) {
        Step step = new Step("step", mode, loadId, 14.4, stimulus, ONE_PERCENT, false);
        Amplifier amplifier = new Amplifier(
                "",
                "Practice",
                "",
                channels,
                SupplyType.UNREGULATED,
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                wellKnown
                        ? List.of(new Rating("rated", PowerKind.CONTINUOUS, Mode.STEREO, 4, 18, 14.4, 0.01, 1000, ""))
                        : List.of(),
                "");
        Bench bench = new Bench(
                "Practice",
                new Supply("Supply", 0, 16, 100),
                new Cable(35, 3, OptionalDouble.empty()),
                wellKnown ? meters() : List.of(),
                List.of(),
                OptionalDouble.of(23));
        List<BenchLoad> loads = List.of(
                load("8ohm", 8, channels), load("4ohm", 4, channels), load("2ohm", 2, channels), load("one", 4, 1));
        return new Subject(
                new Project("Practice", amplifier, bench, loads, List.of(step), new SheetSettings("", "", 0.95, "")),
                step);
    }

    private static BenchLoad load(String id, double ohms, int channels) {
        return new BenchLoad(id, ohms, Collections.nCopies(channels, new LoadBranch(ohms, 0.001 * ohms, 0, "")), 500);
    }

    private static List<Meter> meters() {
        List<Meter> meters = new ArrayList<>();
        for (MeterQuantity quantity : MeterQuantity.values()) {
            meters.add(new Meter(
                    "meter" + quantity.ordinal(),
                    quantity,
                    "Meter",
                    "",
                    new Accuracy(0.002, 0.002, 0.001, 0),
                    Optional.empty(),
                    Optional.empty(),
                    ""));
        }
        return meters;
    }
}
