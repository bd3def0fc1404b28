// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

/** The answer to a lesson's question for one setting of the controls, worked out by its model. */
public sealed interface Answer {
    /** Returns why it is so, for this setting, in a sentence or two. */
    String reason();

    /**
     * A number.
     *
     * @param value in the unit of the {@link Prediction.Number}, finite
     * @param reason why
     */
    record Number(double value, String reason) implements Answer {
        /** Checks the parameters. */
        public Number {
            Checks.finite(value, "value");
            Checks.named(reason, "reason");
        }
    }

    /**
     * An option.
     *
     * @param optionId the id of an option of the {@link Prediction.Choice}
     * @param reason why
     */
    record Choice(String optionId, String reason) implements Answer {
        /** Checks the parameters. */
        public Choice {
            Checks.id(optionId, "optionId");
            Checks.named(reason, "reason");
        }
    }
}
