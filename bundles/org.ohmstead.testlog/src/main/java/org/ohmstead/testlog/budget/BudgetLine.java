// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.Locale;
import java.util.OptionalDouble;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.PartShape;
import org.ohmstead.units.text.Language;

/**
 * A line of a reading's uncertainty budget.
 *
 * @param source where the uncertainty comes from
 * @param input which input of P = V^2 / R it is about; {@link BudgetInput#POWER_WATTS} when it adds to the power itself
 * @param shape how its values are distributed
 * @param degreesOfFreedom how well its standard uncertainty is known; empty when it is taken as exactly known
 * @param inputStandardUncertainty standard uncertainty of the input in the unit of the input, at least 0
 * @param sensitivity watts for each unit of the input; negative where more of the input means less power
 * @param effectWatts sensitivity times standard uncertainty, with its sign
 * @param varianceShare part of the combined variance as a ratio; those of a budget add up to 1; negative where a correlation takes away
 * @param shared whether other readings with the same instruments and load have the same error
 */
public record BudgetLine(
        String source,
        BudgetInput input,
        PartShape shape,
        OptionalDouble degreesOfFreedom,
        double inputStandardUncertainty,
        double sensitivity,
        double effectWatts,
        double varianceShare,
        boolean shared) {

    /** Returns the symbol of the input's unit: V, \u03a9 or W. */
    public String inputUnit() {
        return switch (input) {
            case OUTPUT_VOLTS, SUPPLY_VOLTS -> "V";
            case LOAD_OHMS -> "\u03a9";
            case POWER_WATTS -> "W";
        };
    }

    /** Returns the symbol of the sensitivity's unit: W/V, W/\u03a9 or 1. */
    public String sensitivityUnit() {
        return input == BudgetInput.POWER_WATTS ? "1" : "W/" + inputUnit();
    }

    /** Returns the shape in a word, in the language spoken: normal, rectangular, triangular. */
    public String shapeWord() {
        return shapeWord(Language.current());
    }

    /** Returns the shape in a word of a language. */
    public String shapeWord(Locale language) {
        return new BudgetWords(language).shape(shape);
    }

    /** Returns where the uncertainty comes from, in the language spoken where it is one of our procedures' parts, else as it was logged. */
    public String label() {
        return label(source, Language.current());
    }

    /**
     * Returns where an uncertainty comes from in a language where it is one of our procedures' parts, else as it was logged.
     *
     * @param source as it stands in the log
     * @param language to say it in
     */
    public static String label(String source, Locale language) {
        return new BudgetWords(language).source(source);
    }
}
