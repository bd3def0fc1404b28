// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.RunSignal;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** What there is to say of one value of a check standard. */
final class PointWords {
    private static final Messages TEXTS = Messages.of(PointWords.class);

    private PointWords() {}

    /** Returns for each value of the project's bench the rules that it breaks, in words; empty text when it breaks none. */
    static List<String> rules(QualityReview review) {
        int count = review.values().own().size();
        List<Set<String>> words = new ArrayList<>();
        for (int index = 0; index < count; index++) {
            words.add(new LinkedHashSet<>());
        }
        for (RunSignal signal :
                review.review().map(CheckStandardReview::signals).orElse(List.of())) {
            String sentence = signal.rule().sentence();
            for (int index = signal.firstIndex(); index <= signal.lastIndex(); index++) {
                words.get(index).add(sentence);
            }
        }
        return words.stream().map(each -> String.join(" ", each)).toList();
    }

    /** Returns number, day, value, operator, and the rules that it breaks. */
    static String of(CheckView check, int index) {
        CheckValue value = check.values().get(index);
        String who = value.operator().isEmpty() ? "" : ", " + value.operator();
        String where = value.bench().isEmpty() ? "" : ", " + value.bench();
        String plain = TEXTS.text(
                "point.value",
                Integer.toString(index + 1),
                Shown.minute(value.takenAt()) + who + where,
                Shown.value(value.value()) + check.unitSuffix());
        String rules = check.rules().get(index);
        return rules.isEmpty() ? plain : plain + " " + rules;
    }

    /** Returns the distance from the value before in words. */
    static String range(CheckView check, int index) {
        double distance = Math.abs(check.values().get(index).value()
                - check.values().get(index - 1).value());
        boolean jump = check.review()
                .map(review -> review.chart().ranges().excludes(distance))
                .orElse(false);
        String plain = TEXTS.text(
                "point.range",
                Integer.toString(index),
                Integer.toString(index + 1),
                Numbers.shown(distance) + check.unitSuffix());
        return jump ? TEXTS.text("point.jump", plain) : plain;
    }
}
