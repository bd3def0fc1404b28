// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;
import org.ohmstead.units.Unit;

/** What a learner is asked before seeing the answer. The question holds for any setting of the controls. */
public sealed interface Prediction {
    /** Returns the question, in the language of the lesson. */
    String question();

    /**
     * A number is asked for.
     *
     * @param question the question
     * @param unit unit of the answer, without prefix; percent are percent
     * @param toleranceRatio how far off a right prediction may be, as a part of the answer, at least 0: 0.1 is 10 %
     * @param toleranceAbsolute how far off it may be in the unit, at least 0; the wider of the two counts
     * @param digits significant digits in which the answer is told, 1 to 9
     */
    record Number(String question, Unit unit, double toleranceRatio, double toleranceAbsolute, int digits)
            implements Prediction {
        /** Checks the ranges given above. */
        public Number {
            Checks.named(question, "question");
            Checks.present(unit, "unit");
            Checks.notNegative(toleranceRatio, "toleranceRatio");
            Checks.notNegative(toleranceAbsolute, "toleranceAbsolute");
            Checks.digits(digits, "digits");
        }

        /** Returns whether a prediction is near enough to the answer. */
        public boolean accepts(double predicted, double answer) {
            double allowed = Math.max(toleranceAbsolute, toleranceRatio * Math.abs(answer));
            return Math.abs(predicted - answer) <= allowed;
        }
    }

    /**
     * One of several options is asked for.
     *
     * @param question the question
     * @param options at least two, with different ids
     */
    record Choice(String question, List<Option> options) implements Prediction {
        /** Checks the ranges given above. */
        public Choice {
            Checks.named(question, "question");
            options = Checks.some(options, "options");
            Option.requireDifferent(options);
        }
    }
}
