// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words of a refused value as they stand beside a field. */
public final class Refusals {
    private static final Pattern PARAMETER =
            Pattern.compile("(?s)[A-Za-z ]+ is .*; (it (?:must|needs|may|has) .*)|[A-Za-z ]+ is (missing)");

    private Refusals() {}

    /**
     * Returns the message of a refusal as a sentence for the person at the field. The field's label already says what it is about, so
     * that of "loadOhms is -4.0; it must be a finite number above 0" remains "It must be a number above 0."
     */
    public static String sentence(IllegalArgumentException refused) {
        String message = refused.getMessage() == null
                ? "This value does not fit."
                : refused.getMessage().strip();
        Matcher parameter = PARAMETER.matcher(message);
        if (parameter.matches()) {
            message = parameter.group(1) == null ? "It must not be missing" : parameter.group(1);
            message = message.replace("a finite number", "a number");
        }
        message = Character.toUpperCase(message.charAt(0)) + message.substring(1);
        return message.endsWith(".") || message.endsWith("!") || message.endsWith("?") ? message : message + ".";
    }
}
