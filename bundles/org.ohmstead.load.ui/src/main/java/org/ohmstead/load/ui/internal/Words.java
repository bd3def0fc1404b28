// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** Numbers and phrases as these views show them. */
final class Words {
    private static final Messages TEXTS = Messages.of(Words.class);

    static final String NONE = "\u2013";
    private static final int DIGITS = 4;
    private static final double PERCENT = 100;
    private static final double MILLI = 1e-3;

    private Words() {}

    static String number(double value) {
        return Numbers.localised(Numbers.plain(new BigDecimal(value, new MathContext(DIGITS))));
    }

    static String ohms(double ohms) {
        return Numbers.shown(Double.parseDouble(rounded(ohms)), Unit.OHM);
    }

    private static String rounded(double value) {
        return new BigDecimal(value, new MathContext(DIGITS)).toString();
    }

    static String watts(double watts) {
        return number(watts) + " W";
    }

    static String percent(double ratio) {
        return number(PERCENT * ratio) + " %";
    }

    /** Returns a ratio in percent without the sign of percent, with two places behind the decimal sign and its sign in front. */
    static String signedPercent(double ratio) {
        double percent = PERCENT * ratio;
        boolean tiny = percent != 0 && Math.abs(percent) < 10 * MILLI / 2;
        return tiny ? Numbers.format("%+.1e", percent) : Numbers.format(percent == 0 ? "%.2f" : "%+.2f", percent);
    }

    static String between(double low, double high) {
        return number(low) + " \u2013 " + number(high);
    }

    /** Returns a value with the uncertainty that its tolerance makes: "4.020 \u00b1 0.046 \u03a9 (k = 2)". */
    static String stated(double ohms, double standardRatio) {
        Stated stated = Stated.of(ohms, Coverage.expanded(standardRatio * ohms), Words::number);
        return stated.text() + " " + Unit.OHM.symbol() + " (" + Coverage.words() + ")";
    }

    /** Returns the text of a count: that of the key with ".one" or ".many" behind it. */
    static String count(String key, int number) {
        return TEXTS.text(key + (number == 1 ? ".one" : ".many"), Integer.toString(number));
    }

    static String celsius(double celsius) {
        return Numbers.format("%.0f", celsius);
    }
}
