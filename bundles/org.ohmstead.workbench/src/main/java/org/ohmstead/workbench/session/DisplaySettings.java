// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/**
 * How the user wants numbers and uncertainties shown on the screen; files and copies are the same whatever is chosen.
 *
 * @param coverageFactor by what standard uncertainties are widened where they are shown: 1, 2 or 3
 * @param decimalComma whether numbers are shown with a decimal comma instead of a point
 */
public record DisplaySettings(int coverageFactor, boolean decimalComma) {
    /** Expanded uncertainties with k = 2, numbers with a decimal point. */
    public static final DisplaySettings USUAL = new DisplaySettings(Coverage.USUAL_FACTOR, false);

    /** Returns settings with a factor and the decimal sign of the language that is spoken. */
    public static DisplaySettings asLanguage(int coverageFactor) {
        return new DisplaySettings(coverageFactor, Numbers.languageHasComma());
    }

    /** Checks the factor. */
    public DisplaySettings {
        Coverage.check(coverageFactor);
    }

    /** Returns the factor as it stands beside an uncertainty: "k = 2". */
    public String coverageWords() {
        return Coverage.words(coverageFactor);
    }

    /** Returns what the texts of this process are made with now. */
    static DisplaySettings inForce() {
        return new DisplaySettings(Coverage.factor(), Numbers.decimalComma());
    }

    /** Has all texts of this process that are made from now on follow these settings. */
    void putInForce() {
        Coverage.use(coverageFactor);
        Numbers.useDecimalComma(decimalComma);
    }
}
