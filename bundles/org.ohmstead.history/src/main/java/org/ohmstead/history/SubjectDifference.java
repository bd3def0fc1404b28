// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.UncertaintyBudget;
import org.ohmstead.units.text.Messages;

/**
 * How two subjects differ. What makes both uncertain by the same cause, such as the same meter, is one error that both have, and largely
 * cancels (GUM 5.2, with a correlation coefficient of 1; F.1.2.3).
 *
 * @param first which is compared
 * @param second with which
 * @param watts the first power less the second, in watts
 * @param relative the first over the second, less 1
 * @param confidence of the intervals
 * @param comparisons how many pairs are compared at once; they share the risk of a false statement (Bonferroni)
 */
public record SubjectDifference(
        SubjectPower first,
        SubjectPower second,
        Estimate watts,
        Estimate relative,
        double confidence,
        int comparisons) {
    private static final Messages TEXTS = Messages.of(SubjectDifference.class);

    /** Returns the difference of two powers. */
    static SubjectDifference of(SubjectPower first, SubjectPower second, double confidence, int comparisons) {
        double one = first.own().value();
        double other = second.own().value();
        double ratio = one / other;
        return new SubjectDifference(
                first,
                second,
                combined(first, second, one - other, one, other),
                combined(first, second, ratio - 1, ratio, ratio),
                confidence,
                comparisons);
    }

    /** The uncertainty of a difference or a ratio, with its sensitivities to the relative errors of both. */
    private static Estimate combined(
            SubjectPower first, SubjectPower second, double value, double firstScale, double secondScale) {
        List<Contribution> lines = new ArrayList<>();
        lines.add(Contribution.of("first", firstScale / first.own().value(), first.own()));
        lines.add(Contribution.of("second", secondScale / second.own().value(), second.own()));
        Map<List<String>, Double> effects = new HashMap<>();
        first.shared().forEach(part -> effects.merge(key(part), firstScale * part.relative(), Double::sum));
        second.shared().forEach(part -> effects.merge(key(part), -secondScale * part.relative(), Double::sum));
        int number = 0;
        for (double effect : effects.values()) {
            number++;
            lines.add(new Contribution("shared " + number, 1, Math.abs(effect), Double.POSITIVE_INFINITY));
        }
        return new UncertaintyBudget(value, lines, List.of()).combined();
    }

    private static List<String> key(SharedPart part) {
        return List.of(part.source(), part.cause());
    }

    /** Returns whether the difference is larger than its uncertainty explains. */
    public boolean significant() {
        double risk = (1 - confidence) / comparisons;
        return Math.abs(watts.value()) > watts.expandedUncertainty(1 - risk);
    }

    /** Returns whether some of the uncertainty is common to both, so that it cancels. */
    public boolean sharesInstruments() {
        return first.shared().stream().anyMatch(part -> second.shared().stream()
                .anyMatch(other -> key(other).equals(key(part))));
    }

    private String more() {
        return watts.value() == 0 ? "difference.same" : watts.value() < 0 ? "difference.less" : "difference.more";
    }

    /** Returns it in whole sentences. */
    public String sentence() {
        double expanded = watts.expandedUncertainty(confidence);
        String figures = TEXTS.text(
                more(),
                first.subject().name(),
                second.subject().name(),
                Words.signedPercent(relative.value()),
                Words.uncertainty(expanded, "W"),
                Words.percent(confidence),
                Words.quantity(Math.abs(watts.value()), "W"));
        String verdict = TEXTS.text(significant() ? "difference.real" : "difference.notShown");
        String both = figures + " " + verdict;
        return comparisons > 1 ? both + " " + TEXTS.text("difference.several", Integer.toString(comparisons)) : both;
    }
}
