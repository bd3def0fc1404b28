// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which model was chosen among those that the readings can tell apart.
 *
 * @param chosen the model to work with
 * @param compared all allowed models, with what became of them
 * @param clear whether the readings speak for the chosen one alone
 * @param sentences what the choice rests on, and if it is not clear, what would make it so
 */
public record ModelChoice(ModelFit chosen, List<Compared> compared, boolean clear, List<String> sentences) {
    /**
     * A model is preferred to another from this difference of AICc on (a choice of this program: the worse one is then
     * about exp(6/2) = 20 times less likely; K. P. Burnham, D. R. Anderson, 2002).
     */
    public static final double CLEAR_FROM = 6;

    /** Copies the lists. */
    public ModelChoice {
        compared = List.copyOf(compared);
        sentences = List.copyOf(sentences);
    }

    /**
     * One of the models.
     *
     * @param kind which
     * @param fit the fit, when the readings tell all its values
     * @param aboveChosen its AICc above that of the chosen one, when both have one
     * @param remark why it was not compared, in whole sentences; may be empty
     */
    public record Compared(ModelKind kind, Optional<ModelFit> fit, OptionalDouble aboveChosen, String remark) {}

    /** Returns the other models that fit about as well, so that the readings do not decide. */
    public List<ModelFit> rivals() {
        return compared.stream()
                .filter(this::rival)
                .map(other -> other.fit().orElseThrow())
                .toList();
    }

    private boolean rival(Compared other) {
        if (other.kind() == chosen.kind()
                || other.fit().isEmpty()
                || other.aboveChosen().isEmpty()) {
            return false;
        }
        double above = other.aboveChosen().getAsDouble();
        // A model that contains the chosen one is a rival only if it does better: it can always do as well.
        return chosen.kind().isSpecialCaseOf(other.kind()) ? above < 0 : above < CLEAR_FROM;
    }
}
