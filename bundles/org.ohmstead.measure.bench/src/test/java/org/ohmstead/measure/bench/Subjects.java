// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.time.LocalDate;
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

/** Made-up amplifiers on a made-up bench. */
final class Subjects {
    private Subjects() {}

    static Subject of(int channels, SupplyType type, Mode mode, Rating... ratings) {
        Optional<LocalDate> day = Optional.of(LocalDate.of(2026, 1, 15));
        Bench bench = new Bench(
                "",
                new Supply("Supply", 0, 16, 100),
                new Cable(35, 3, OptionalDouble.of(0.01)),
                List.of(
                        meter("v", MeterQuantity.OUTPUT_VOLTS, new Accuracy(0.004, 0.005, 0, 0), day),
                        meter("s", MeterQuantity.SUPPLY_VOLTS, new Accuracy(0.0003, 0.002, 0.001, 0), day),
                        meter("a", MeterQuantity.SUPPLY_AMPS, new Accuracy(0.002, 0.02, 0.01, 0), day),
                        meter("t", MeterQuantity.TEMPERATURE_CELSIUS, new Accuracy(0, 1, 0.1, 0), day)),
                List.of(),
                OptionalDouble.of(22.5));
        Amplifier amplifier = new Amplifier(
                "", "M-1", "", channels, type, List.of(), List.of(), OptionalDouble.empty(), List.of(ratings), "");
        Step step = new Step(
                "s",
                mode,
                "4ohm",
                14.4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                false);
        List<BenchLoad> loads =
                List.of(load("8ohm", 8, channels), load("4ohm", 4, channels), load("2ohm", 2, channels));
        return new Subject(
                new Project("Made up", amplifier, bench, loads, List.of(step), new SheetSettings("", "", 0.95, "")),
                step);
    }

    static Rating rating(double loadOhms, double powerWatts) {
        return new Rating(
                "r" + loadOhms, PowerKind.CONTINUOUS, Mode.STEREO, loadOhms, powerWatts, 14.4, 0.01, 1000, "");
    }

    static BenchLoad load(Subject subject, String id) {
        return subject.project().load(id).orElseThrow();
    }

    private static BenchLoad load(String id, double ohms, int channels) {
        LoadBranch branch = new LoadBranch(ohms, 0.001 * ohms, 0, "");
        return new BenchLoad(id, ohms, java.util.Collections.nCopies(channels, branch), 1000);
    }

    private static Meter meter(String id, MeterQuantity quantity, Accuracy accuracy, Optional<LocalDate> day) {
        return new Meter(id, quantity, id, "", accuracy, day, day, "");
    }
}
