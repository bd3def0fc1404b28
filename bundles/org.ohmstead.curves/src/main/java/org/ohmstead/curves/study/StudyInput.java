// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** Sorts out points that cannot be, before anything is fitted. */
final class StudyInput {
    private static final Messages TEXTS = Messages.of(StudyInput.class);

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
                input.refused.add(new RefusedPoint(point, TEXTS.text("input.otherChannel")));
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
            return Optional.of(TEXTS.text("input.noVolts", StudyWords.say("%.4g", point.supplyVolts())));
        }
        if (point.supplyVolts() > HIGHEST_VOLTS) {
            return Optional.of(TEXTS.text("input.highVolts", StudyWords.say("%.6g", point.supplyVolts())));
        }
        if (point.loadOhms() <= 0) {
            return Optional.of(TEXTS.text("input.noLoad", StudyWords.say("%.4g", point.loadOhms())));
        }
        if (point.powerWatts() <= 0) {
            return Optional.of(TEXTS.text("input.noPower", StudyWords.say("%.4g", point.powerWatts())));
        }
        if (point.standardUncertaintyWatts() <= 0) {
            return Optional.of(TEXTS.text("input.noUncertainty"));
        }
        if (point.standardUncertaintyWatts() >= point.powerWatts()) {
            return Optional.of(TEXTS.text(
                    "input.largeUncertainty",
                    StudyWords.say("%.4g", point.standardUncertaintyWatts()),
                    StudyWords.say("%.4g", point.powerWatts())));
        }
        return Optional.empty();
    }

    private static double conductance(StudyPoint point) {
        return point.powerWatts()
                * point.channelOhms()
                / (point.channels() * point.supplyVolts() * point.supplyVolts());
    }

    private static String otherUnit(double ratio) {
        return TEXTS.text(
                "input.otherUnit",
                StudyWords.say("%.0f", ratio > 1 ? ratio : 1 / ratio),
                TEXTS.text(ratio > 1 ? "words.above" : "words.below"));
    }
}
