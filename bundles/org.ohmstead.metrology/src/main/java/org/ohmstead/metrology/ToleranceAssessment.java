// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * A measured value judged against one or two limits. Made by {@link Conformity#assess}.
 *
 * @param verdict what the rule says
 * @param measured the measured value with its uncertainty
 * @param tolerance the allowed values
 * @param rule the decision rule that was used
 * @param probabilityMet the conformance probability, 0 to 1: how likely it is that the true value is allowed
 * @param acceptance the measured values for which the verdict is {@link Verdict#MEETS}; nothing if the measurement is
 *     too uncertain for that verdict at any value
 */
public record ToleranceAssessment(
        Verdict verdict,
        Estimate measured,
        ToleranceInterval tolerance,
        DecisionRule rule,
        double probabilityMet,
        Optional<ToleranceInterval> acceptance) {
    private static final Messages TEXTS = Messages.of(ToleranceAssessment.class);

    /** Checks the ranges given above. */
    public ToleranceAssessment {
        Checks.notNegative("probabilityMet", probabilityMet);
        if (probabilityMet > 1) {
            throw new IllegalArgumentException("probabilityMet is " + probabilityMet + " but must not be above 1.");
        }
    }

    /**
     * Returns the specific consumer's risk, 0 to 1: how likely this accepted item is a bad one (JCGM 106, clause 9);
     * nothing if it was not accepted.
     */
    public OptionalDouble consumersRisk() {
        return verdict == Verdict.MEETS ? OptionalDouble.of(1 - probabilityMet) : OptionalDouble.empty();
    }

    /**
     * Returns the specific producer's risk, 0 to 1: how likely this rejected item is a good one (JCGM 106, clause 9);
     * nothing if it was not rejected.
     */
    public OptionalDouble producersRisk() {
        return verdict == Verdict.FALLS_SHORT ? OptionalDouble.of(probabilityMet) : OptionalDouble.empty();
    }

    /** Returns the verdict with its risk in whole sentences; the unit may be empty. */
    public String sentence(String unit) {
        String value = Sentences.quantity(measured.value(), unit);
        double told = verdict == Verdict.MEETS ? 1 - probabilityMet : probabilityMet;
        String sentence =
                TEXTS.text("assessment." + verdict.name(), value, tolerance.words(unit), Sentences.percent(told));
        return acceptance.isEmpty()
                ? TEXTS.text("assessment.never", sentence, Sentences.quantity(measured.standardUncertainty(), unit))
                : sentence;
    }
}
