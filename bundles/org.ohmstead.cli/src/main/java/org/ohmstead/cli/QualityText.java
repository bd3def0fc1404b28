// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.history.quality.ReferenceComparison;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.metrology.quality.ControlLimits;
import org.ohmstead.model.Severity;

/** Reviews of check standards for people. */
final class QualityText {
    private QualityText() {}

    /** Prints one line for each check standard. */
    static void table(Console console, List<QualityReview> reviews) {
        TextTable table = TextTable.named("quality.columns");
        for (QualityReview review : reviews) {
            Optional<ControlLimits> limits =
                    review.review().map(CheckStandardReview::chart).map(chart -> chart.readings());
            OptionalDouble number =
                    review.reference().map(ReferenceComparison::enNumber).orElse(OptionalDouble.empty());
            table.row(
                    review.standard().id(),
                    review.standard().unit(),
                    Integer.toString(review.values().own().size()),
                    review.values()
                            .newest()
                            .map(CheckValue::value)
                            .map(Texts::number)
                            .orElse(""),
                    limits.map(each -> Texts.number(each.lower())).orElse(""),
                    limits.map(each -> Texts.number(each.centre())).orElse(""),
                    limits.map(each -> Texts.number(each.upper())).orElse(""),
                    number.isPresent() ? Texts.fixed(number.getAsDouble(), 2) : "",
                    review.dueOn().map(Object::toString).orElse(""),
                    state(review));
        }
        table.print(console);
    }

    /** Returns "in order", "look at it" or "not to be used". */
    static String state(QualityReview review) {
        if (!review.mayRun()) {
            return Texts.of("quality.unusable");
        }
        return review.findings().isEmpty() ? Texts.of("quality.inOrder") : Texts.of("quality.look");
    }

    /** Prints what is to be done, or that all is in order. */
    static void findings(Console console, List<QualityReview> reviews) {
        for (QualityReview review : reviews) {
            if (review.findings().isEmpty()) {
                console.line(Texts.of("quality.nothing", review.standard().name()));
            }
            for (Finding finding : review.findings()) {
                console.line(Texts.severity(finding.serious() ? Severity.WARNING : Severity.NOTE) + "  "
                        + review.standard().name() + ": " + finding.sentence());
                console.line("    " + finding.remedy());
            }
        }
    }

    /** Prints what else is to be known. */
    static void notes(Console console, List<QualityReview> reviews) {
        for (QualityReview review : reviews) {
            for (String note : review.notes()) {
                console.line(review.standard().name() + ": " + note);
            }
        }
    }
}
