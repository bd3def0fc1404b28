// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Range;
import org.ohmstead.units.Unit;

/** A person at the bench, by way of a console or a window. A service. A call returns when the person has answered. */
public interface OperatorPort {
    /**
     * Asks for a value.
     *
     * @return the value in the question's unit; empty when the person cancels
     * @throws InterruptedException when the question was withdrawn
     */
    OptionalDouble ask(Question question) throws InterruptedException;

    /**
     * Asks for a few words, such as the name of a file.
     *
     * @param what what is wanted, a whole sentence
     * @return the words; empty when the person cancels
     * @throws InterruptedException when the question was withdrawn
     */
    Optional<String> askText(String what) throws InterruptedException;

    /**
     * Says something and waits for a yes or a no.
     *
     * @param sentences what is to be done or decided
     * @return whether it is yes: done, or agreed to
     * @throws InterruptedException when the question was withdrawn
     */
    boolean confirm(String sentences) throws InterruptedException;

    /** Says at once, without waiting, that something must be done now, such as to switch off. Called from any thread. */
    void warn(String sentences);

    /**
     * A question for a value.
     *
     * @param what what is wanted, such as "supply current"
     * @param unit its unit
     * @param possible what it can be at all
     * @param likely what the forecast makes of it, within what is possible
     */
    record Question(String what, Unit unit, Range possible, Range likely) {
        public Question {
            if (what == null || what.isBlank() || unit == null) {
                throw new IllegalArgumentException(
                        "what is \"" + what + "\" and unit " + unit + "; both must be given");
            }
            if (likely.low() < possible.low() || likely.high() > possible.high()) {
                throw new IllegalArgumentException(
                        "likely is " + likely + "; it must lie within possible, which is " + possible);
            }
        }

        /** Makes a question whose likely range is cut to what is possible. */
        public static Question of(String what, Unit unit, Range possible, Range likely) {
            double low = Math.max(possible.low(), Math.min(possible.high(), likely.low()));
            double high = Math.max(low, Math.min(possible.high(), likely.high()));
            return new Question(what, unit, possible, new Range(low, high));
        }

        /** Returns whether a value can be at all. */
        public boolean isPossible(double value) {
            return Double.isFinite(value) && value >= possible.low() && value <= possible.high();
        }

        /** Returns whether the forecast makes a value likely. */
        public boolean isLikely(double value) {
            return value >= likely.low() && value <= likely.high();
        }
    }
}
