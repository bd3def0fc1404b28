// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/**
 * The refusals of the records, which they say in English for whoever writes a program, in the language of whoever reads a file's fault.
 * A refusal of another form stays as it is.
 */
final class Refusal {
    private static final Messages TEXTS = Messages.of(Refusal.class);
    /** How each form is written, narrow ones first, and the name of the text that says it. */
    private static final List<Form> FORMS = List.of(
            form("(.+) is (.+); it must be a finite number above (\\S+)", "refusal.above"),
            form("(.+) is (.+); it must be a finite number of at least (\\S+)", "refusal.atLeast"),
            form("(.+) is (.+); it must be a finite number", "refusal.finite"),
            form("(.+) is (.+); it must lie between (\\S+) and (\\S+)", "refusal.between"),
            form("(.+) is (.+); it must be above (\\S+) and at most (\\S+) times the rated power", "refusal.rated"),
            form("(.+) is (.+); it must be above (\\S+) and at most (\\S+)", "refusal.aboveUpTo"),
            form("(.+) is (.+); it must be above (\\S+), which is (\\S+)", "refusal.aboveOther"),
            form("(.+) is (.+); it must be at least the number of names, (\\S+)", "refusal.edits"),
            form("(.+) is (.+); it must be at least (\\S+), which is (\\S+)", "refusal.atLeastOther"),
            form("(.+) is (.+); it must lie within the project's folder, such as (.+)", "refusal.inProject"),
            form("(.+) is (.+); it must be the plain name of a file beside the list, without .*", "refusal.plainName"),
            form("(.+) is (.+); it must be 64 hexadecimal digits", "refusal.hash"),
            form("(.+) is (.+); (\\S+) fins of it do not fit on (\\S+), which is (\\S+)", "refusal.fins"),
            form("(.+) is blank; it needs a text", "refusal.blank"),
            form("(.+) is missing", "refusal.missing"),
            form("(.+) is empty; a load needs at least one resistance", "refusal.noBranch"),
            form("(.+) is empty; a reading needs at least one channel", "refusal.noChannel"),
            form("(.+) is empty; it needs one number for each channel", "refusal.noScale"),
            form("(.+) is (.+), the same as (\\S+); a correlation is between .*", "refusal.sameParts"),
            form("(.+) is holding the entry (.+) twice; a reading is set aside once", "refusal.setAsideTwice"),
            form("(.+) is holding the step (.+) twice", "refusal.restTwice"),
            form("(.+) is holding (.+) twice for channel (.+) at (.+); each needs a .*", "refusal.figureTwice"));

    private Refusal() {}

    private record Form(Pattern written, String key) {}

    private static Form form(String written, String key) {
        return new Form(Pattern.compile(written, Pattern.DOTALL), key);
    }

    /** Returns a refusal as it is said to people. */
    static String said(String refusal) {
        for (Form form : FORMS) {
            Matcher found = form.written().matcher(refusal);
            if (found.matches()) {
                Object[] arguments = new Object[found.groupCount()];
                for (int index = 0; index < arguments.length; index++) {
                    arguments[index] = found.group(index + 1);
                }
                return TEXTS.text(form.key(), arguments);
            }
        }
        return refusal;
    }
}
