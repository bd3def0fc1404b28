// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeterQuantity;

/** What the sheet calls the cases of the model by in every language: signs, symbols and the names of its marks. */
final class Words {
    private Words() {}

    static String of(DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> "THD_F";
            case THD_R -> "THD_R";
            case THD_PLUS_NOISE_R -> "THD+N_R";
        };
    }

    /** Returns the sign that belongs before a power that is only a bound. */
    static String bound(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "";
            case NOT_REACHED -> "\u2265\u00a0";
            case ALREADY_BEYOND -> "\u2264\u00a0";
        };
    }

    static String mark(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "meets";
            case FALLS_SHORT -> "short";
            case UNDECIDED -> "undecided";
        };
    }

    static String unit(MeterQuantity quantity) {
        return switch (quantity) {
            case OUTPUT_VOLTS, SUPPLY_VOLTS -> "V";
            case SUPPLY_AMPS -> "A";
            case LOAD_OHMS -> "\u03a9";
            case TEMPERATURE_CELSIUS -> "\u00b0C";
        };
    }
}
