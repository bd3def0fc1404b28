// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.signal.sound.DriveLinearity;
import org.ohmstead.signal.sound.SeriesComparison;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.workbench.look.Numbers;

/** What a series and its comparison tell, in sentences. */
final class SoundFacts {
    private SoundFacts() {}

    static String of(SoundSeries series, Optional<SeriesComparison> comparison) {
        List<String> sentences = new ArrayList<>();
        comparison.ifPresent(found -> addComparison(found, sentences));
        series.points().stream()
                .map(SoundPoint::frequencyHz)
                .distinct()
                .sorted()
                .forEach(hertz -> DriveLinearity.of(series, hertz, DriveLinearity.USUAL_THRESHOLD_DB)
                        .ifPresent(found -> sentences.add(linearity(found))));
        return String.join(" ", sentences);
    }

    private static void addComparison(SeriesComparison found, List<String> sentences) {
        int count = found.differences().size();
        if (count == 0) {
            sentences.add(Texts.say(found.weightingsApart().isEmpty() ? "facts.nothing" : "facts.weightings"));
            return;
        }
        double mean = found.differences().stream()
                .mapToDouble(each -> each.change().valueDb())
                .average()
                .orElseThrow();
        long told = found.differences().stream()
                .filter(SeriesComparison.Difference::significant)
                .count();
        sentences.add(Texts.say("facts.compared", count, Numbers.format("%+.1f", mean), told));
        sentences.add(Texts.say(found.sharedMeter() ? "facts.shared" : "facts.unshared"));
        int alone = found.onlyFirst().size() + found.onlySecond().size();
        if (alone > 0) {
            sentences.add(Texts.say("facts.alone", alone));
        }
        if (found.differences().stream().anyMatch(SeriesComparison.Difference::moved)) {
            sentences.add(Texts.say("facts.moved"));
        }
    }

    private static String linearity(DriveLinearity found) {
        String hertz = Numbers.shown(found.frequencyHz());
        return found.first()
                .map(point -> Texts.say(
                        "facts.compressed",
                        hertz,
                        Numbers.shown(point.driveDb()),
                        Numbers.format("%.1f", point.shortfall().valueDb())))
                .orElseGet(() -> Texts.say("facts.straight", hertz));
    }
}
