// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;
import java.util.Locale;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;

/** Something that a learner can set. Its id is what files and command lines call it. */
public sealed interface Control {
    /** Returns its name among the controls of a lesson: small letters, digits and hyphens. */
    String id();

    /** Returns what stands beside it, in the language of the lesson. */
    String label();

    /** Returns the value that it has at first, as {@link Controls#number} gives it. */
    double start();

    /** Returns the value nearest to a wished one that this control can have. */
    double nearest(double wished);

    /** Returns a value as people read it, with its unit. */
    String text(double value, Locale locale);

    /**
     * A number in a range.
     *
     * @param id its name
     * @param label what stands beside it
     * @param unit the unit of all its numbers, without prefix; percent are percent (5 is 5 %)
     * @param least smallest value, finite
     * @param most greatest value, above {@code least}
     * @param start value at first, within the range
     * @param logarithmic whether equal ways of the slider are equal ratios; then {@code least} is above 0
     * @param step distance of the values it can have from {@code least} on; 0 for any value
     * @param digits significant digits to show, 1 to 9
     */
    record Slider(
            String id,
            String label,
            Unit unit,
            double least,
            double most,
            double start,
            boolean logarithmic,
            double step,
            int digits)
            implements Control {
        /** Checks the ranges given above. */
        public Slider {
            Checks.id(id, "id");
            Checks.named(label, "label");
            Checks.present(unit, "unit");
            Checks.finite(least, "least");
            Checks.finite(most, "most");
            Checks.notNegative(step, "step");
            Checks.digits(digits, "digits");
            if (!(most > least) || !(start >= least && start <= most)) {
                throw new IllegalArgumentException("least, start and most of " + id + " are " + least + ", " + start
                        + " and " + most + "; they must rise, and start may equal either end");
            }
            if (logarithmic && least <= 0) {
                throw new IllegalArgumentException(
                        "least of " + id + " is " + least + "; on a logarithmic slider it must be above 0");
            }
        }

        @Override
        public double nearest(double wished) {
            double within = Math.max(least, Math.min(most, Checks.finite(wished, "wished")));
            if (step <= 0) {
                return within;
            }
            double stepped = least + step * Math.rint((within - least) / step);
            return Math.max(least, Math.min(most, stepped));
        }

        /** Returns the value at a place along the slider, 0 (least) to 1 (most). */
        public double atPlace(double place) {
            double within = Math.max(0, Math.min(1, Checks.finite(place, "place")));
            return nearest(logarithmic ? least * Math.pow(most / least, within) : least + within * (most - least));
        }

        /** Returns the place of a value along the slider, 0 to 1. */
        public double placeOf(double value) {
            double within = Math.max(least, Math.min(most, Checks.finite(value, "value")));
            return logarithmic ? Math.log(within / least) / Math.log(most / least) : (within - least) / (most - least);
        }

        @Override
        public String text(double value, Locale locale) {
            return QuantityFormat.localised(digits, locale).format(new Quantity(value, unit));
        }

        /** Returns this slider with another range and start, as a description of a lesson may ask for. */
        public Slider withRange(double newLeast, double newMost, double newStart) {
            return new Slider(id, label, unit, newLeast, newMost, newStart, logarithmic, step, digits);
        }
    }

    /**
     * One of a few options; its number is the index of the option, from 0.
     *
     * @param id its name
     * @param label what stands beside it
     * @param options at least two, with different ids
     * @param startIndex index of the option chosen at first
     */
    record Choice(String id, String label, List<Option> options, int startIndex) implements Control {
        /** Checks the ranges given above. */
        public Choice {
            Checks.id(id, "id");
            Checks.named(label, "label");
            options = Checks.some(options, "options");
            Option.requireDifferent(options);
            if (startIndex < 0 || startIndex >= options.size()) {
                throw new IllegalArgumentException(
                        "startIndex is " + startIndex + "; it must lie between 0 and " + (options.size() - 1));
            }
        }

        @Override
        public double start() {
            return startIndex;
        }

        @Override
        public double nearest(double wished) {
            return Math.max(0, Math.min(options.size() - 1.0, Math.rint(Checks.finite(wished, "wished"))));
        }

        @Override
        public String text(double value, Locale locale) {
            return options.get((int) nearest(value)).text();
        }
    }

    /**
     * Something that is on or off; its number is 1 or 0.
     *
     * @param id its name
     * @param label what stands beside it
     * @param onText what is said when it is on
     * @param offText what is said when it is off
     * @param startsOn whether it is on at first
     */
    record Switch(String id, String label, String onText, String offText, boolean startsOn) implements Control {
        /** Checks the texts. */
        public Switch {
            Checks.id(id, "id");
            Checks.named(label, "label");
            Checks.named(onText, "onText");
            Checks.named(offText, "offText");
        }

        @Override
        public double start() {
            return startsOn ? 1 : 0;
        }

        @Override
        public double nearest(double wished) {
            return Checks.finite(wished, "wished") >= 0.5 ? 1 : 0;
        }

        @Override
        public String text(double value, Locale locale) {
            return value >= 0.5 ? onText : offText;
        }
    }
}
