// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.Locale;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/**
 * One setting of a kind of signal, as a field or an option asks for it.
 *
 * @param id its name, the same in every language: "frequency"
 * @param unit what a bare number means
 * @param usual the text that stands there at first
 * @param lowest the lowest value, in the unit
 * @param highest the highest value
 * @param form how it is written
 */
public record SignalSetting(String id, Unit unit, String usual, double lowest, double highest, Form form) {
    /** How a setting is written. */
    public enum Form {
        /** A quantity. */
        QUANTITY,
        /** A quantity, or nothing. */
        OPTIONAL_QUANTITY,
        /** A whole number. */
        WHOLE_NUMBER,
        /** Frequencies with commas between, each perhaps with its level after an @: "1000, 2000@-6". */
        TONES
    }

    static SignalSetting quantity(String id, Unit unit, String usual, double lowest, double highest) {
        return new SignalSetting(id, unit, usual, lowest, highest, Form.QUANTITY);
    }

    /** Returns its name for people, in the language spoken now. */
    public String label() {
        return label(Language.current());
    }

    /** Returns its name for people, in a language. */
    public String label(Locale locale) {
        return Messages.of(SignalSetting.class, locale).text("setting." + id);
    }

    /** Returns a sentence that explains it, in the language spoken now. */
    public String hint() {
        return Messages.of(SignalSetting.class).text("setting." + id + ".hint");
    }
}
