// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One command or query of a command set.
 *
 * @param text with placeholders in braces
 * @param answer what comes back; empty when nothing does
 */
record CommandLine(String text, Optional<AnswerShape> answer) {
    private static final Pattern PLACEHOLDER = Pattern.compile("\\{([A-Za-z]+)}");

    /** Returns the placeholders in it. */
    Set<String> placeholders() {
        Set<String> names = new LinkedHashSet<>();
        PLACEHOLDER.matcher(text).results().forEach(found -> names.add(found.group(1)));
        return names;
    }

    /** Returns whether braces are there that are no placeholders. */
    boolean hasLooseBraces() {
        String rest = PLACEHOLDER.matcher(text).replaceAll("");
        return rest.indexOf('{') >= 0 || rest.indexOf('}') >= 0;
    }

    /** Returns the command to send. */
    String filled(Map<String, String> values) {
        return PLACEHOLDER
                .matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(values.getOrDefault(found.group(1), "")));
    }
}
