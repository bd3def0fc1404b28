// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.units.text.Messages;

/**
 * A part of a query.
 *
 * @param key what stands before the colon; empty for a plain word
 * @param value what stands behind it, or the word
 * @param quoted whether the value stands in quotation marks
 */
record FindToken(String key, String value, boolean quoted) {
    private static final Messages TEXTS = Messages.of(FindToken.class);
    private static final char QUOTE = '"';

    /** Returns the parts of a text; a quotation mark within quotation marks is written twice. */
    static List<FindToken> split(String text) throws FindException {
        List<FindToken> tokens = new ArrayList<>();
        int at = 0;
        while (at < text.length()) {
            if (Character.isWhitespace(text.charAt(at))) {
                at++;
            } else {
                at = token(text, at, tokens);
            }
        }
        return tokens;
    }

    private static int token(String text, int start, List<FindToken> tokens) throws FindException {
        int valueStart = start;
        String key = "";
        if (text.charAt(start) != QUOTE) {
            int end = plainEnd(text, start);
            int colon = text.indexOf(':', start);
            if (colon < 0 || colon >= end) {
                tokens.add(new FindToken("", text.substring(start, end), false));
                return end;
            }
            key = text.substring(start, colon);
            valueStart = colon + 1;
            if (key.isEmpty()) {
                throw new FindException(TEXTS.text("query.colon"));
            }
        }
        if (valueStart == text.length() || text.charAt(valueStart) != QUOTE) {
            int end = plainEnd(text, valueStart);
            tokens.add(new FindToken(key, text.substring(valueStart, end), false));
            return end;
        }
        return quoted(text, key, valueStart, tokens);
    }

    private static int plainEnd(String text, int start) {
        int end = start;
        while (end < text.length() && !Character.isWhitespace(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static int quoted(String text, String key, int start, List<FindToken> tokens) throws FindException {
        StringBuilder value = new StringBuilder();
        int at = start + 1;
        while (at < text.length()) {
            char each = text.charAt(at);
            if (each != QUOTE) {
                value.append(each);
                at++;
            } else if (at + 1 < text.length() && text.charAt(at + 1) == QUOTE) {
                value.append(QUOTE);
                at += 2;
            } else {
                return close(text, key, value.toString(), at + 1, tokens);
            }
        }
        throw new FindException(TEXTS.text("query.unclosed", value.toString()));
    }

    private static int close(String text, String key, String value, int end, List<FindToken> tokens)
            throws FindException {
        if (end < text.length() && !Character.isWhitespace(text.charAt(end))) {
            throw new FindException(TEXTS.text("query.goesOn", value));
        }
        if (key.isEmpty() && value.isBlank()) {
            throw new FindException(TEXTS.text("query.nothing"));
        }
        tokens.add(new FindToken(key, value, true));
        return end;
    }
}
