// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.model.PartShape;
import org.ohmstead.units.text.Messages;

/**
 * The words of budgets in one language. A log keeps the parts of a reading under the English names that the procedure gave them; those of
 * our own procedures are said in the language, other ones stay as they are.
 */
final class BudgetWords {
    private static final String SOURCE = "source.";

    /** A name with something in brackets behind it, such as "output volts (meter)". */
    private static final Pattern BRACKETS = Pattern.compile("(.+) \\(([^()]+)\\)");

    private final Messages texts;

    BudgetWords(Locale language) {
        texts = Messages.of(BudgetWords.class, language);
    }

    String text(String key, Object... arguments) {
        return texts.text(key, arguments);
    }

    String shape(PartShape shape) {
        return text("shape." + shape.name());
    }

    /** Returns where an uncertainty comes from: "output volts, calibration" part by part. */
    String source(String logged) {
        Matcher brackets = BRACKETS.matcher(logged);
        if (brackets.matches()) {
            return source(brackets.group(1)) + " (" + source(brackets.group(2)) + ")";
        }
        int comma = logged.indexOf(", ");
        if (comma > 0) {
            return word(logged.substring(0, comma)) + ", " + source(logged.substring(comma + 2));
        }
        return word(logged);
    }

    private String word(String logged) {
        String key = SOURCE + logged.replace(' ', '_');
        return texts.has(key) ? text(key) : logged;
    }
}
