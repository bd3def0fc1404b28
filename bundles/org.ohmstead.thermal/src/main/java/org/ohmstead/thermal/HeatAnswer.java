// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/** What a limit allows: a figure, no bound, or nothing; always with a sentence that says so. */
public sealed interface HeatAnswer {
    /** Returns a whole sentence for the person at the bench. */
    String sentence();

    /** Returns the figure, or empty when there is none. */
    default OptionalDouble value() {
        return OptionalDouble.empty();
    }

    /**
     * The limit binds.
     *
     * @param figure seconds, watts or a ratio, as the question asked
     * @param sentence what it means
     */
    record Bounded(double figure, String sentence) implements HeatAnswer {
        public Bounded {
            Checks.notNegative(figure, "figure");
            Checks.named(sentence, "sentence");
        }

        @Override
        public OptionalDouble value() {
            return OptionalDouble.of(figure);
        }
    }

    /**
     * No limit binds.
     *
     * @param sentence why
     */
    record Unlimited(String sentence) implements HeatAnswer {
        public Unlimited {
            Checks.named(sentence, "sentence");
        }
    }

    /**
     * It cannot be done at all.
     *
     * @param sentence why not
     * @param remedy what to do about it
     */
    record Impossible(String sentence, String remedy) implements HeatAnswer {
        public Impossible {
            Checks.named(sentence, "sentence");
            Checks.named(remedy, "remedy");
        }
    }
}
