// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Sorts out points that cannot be, before anything is fitted. */
final class StudyInput {
    /** Highest supply that a vehicle's amplifier can meet, with room (two batteries and a load dump). */
    private static final double HIGHEST_VOLTS = 100;

    /** A reading so many times off the middle of all is in another unit, not a bad reading. */
    private static final double OTHER_UNIT_RATIO = 100;

    private final List<StudyPoint> accepted = new ArrayList<>();
    private final List<RefusedPoint> refused = new ArrayList<>();

    private StudyInput() {}

    static StudyInput of(StudyRequest request) {
        StudyInput input = new StudyInput();
        List<StudyPoint> possible = new ArrayList<>();
        for (StudyPoint point : request.points()) {
            Optional<String> reason = impossible(point);
            if (reason.isPresent()) {
                input.refused.add(new RefusedPoint(point, reason.get()));
            } else if (!request.channels().includes(point)) {
                input.refused.add(new RefusedPoint(
                        point, "This reading is not of the channel that was chosen. Choose all channels to use it."));
            } else {
                possible.add(point);
            }
        }
        double[] conductances = new double[possible.size()];
        for (int i = 0; i < conductances.length; i++) {
            conductances[i] = conductance(possible.get(i));
        }
        double[] sorted = conductances.clone();
        Arrays.sort(sorted);
        for (int i = 0; i < conductances.length; i++) {
            double ratio = conductances[i] / sorted[sorted.length / 2];
            if (ratio > OTHER_UNIT_RATIO || ratio < 1 / OTHER_UNIT_RATIO) {
                input.refused.add(new RefusedPoint(possible.get(i), otherUnit(ratio)));
            } else {
                input.accepted.add(possible.get(i));
            }
        }
        return input;
    }

    List<StudyPoint> accepted() {
        return List.copyOf(accepted);
    }

    List<RefusedPoint> refused() {
        return List.copyOf(refused);
    }

    private static Optional<String> impossible(StudyPoint point) {
        if (point.supplyVolts() <= 0) {
            return Optional.of(StudyWords.say(
                    "The supply voltage is %.4g V. Enter the voltage at the amplifier's terminals during the reading.",
                    point.supplyVolts()));
        }
        if (point.supplyVolts() > HIGHEST_VOLTS) {
            return Optional.of(StudyWords.say(
                    "A supply of %.6g V is no vehicle's: if it is in millivolts, enter it in volts.",
                    point.supplyVolts()));
        }
        if (point.loadOhms() <= 0) {
            return Optional.of(
                    StudyWords.say("The load is %.4g ohm. Enter the resistance of the load.", point.loadOhms()));
        }
        if (point.powerWatts() <= 0) {
            return Optional.of(StudyWords.say(
                    "The power is %.4g W, which no curve of power passes through. Void the reading or take it again.",
                    point.powerWatts()));
        }
        if (point.standardUncertaintyWatts() <= 0) {
            return Optional.of("The power has no uncertainty, so the reading cannot be weighed against the others."
                    + " Enter one, e.g. from the meter's accuracy.");
        }
        if (point.standardUncertaintyWatts() >= point.powerWatts()) {
            return Optional.of(StudyWords.say(
                    "The uncertainty of %.4g W is as large as the power of %.4g W: one of them is perhaps in another"
                            + " unit. Enter both in watts.",
                    point.standardUncertaintyWatts(), point.powerWatts()));
        }
        return Optional.empty();
    }

    private static double conductance(StudyPoint point) {
        return point.powerWatts()
                * point.channelOhms()
                / (point.channels() * point.supplyVolts() * point.supplyVolts());
    }

    private static String otherUnit(double ratio) {
        return StudyWords.say(
                "For its supply voltage and load this power is about %.0f times %s the others, as if power, load or"
                        + " supply were in another unit. Enter watts, ohms and volts.",
                ratio > 1 ? ratio : 1 / ratio, ratio > 1 ? "above" : "below");
    }
}
