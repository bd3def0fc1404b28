// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

/** Texts from outside, made fit for pages and charts. */
final class PlainText {
    private static final char REPLACEMENT = '\ufffd';

    private PlainText() {}

    /** Replaces what XML 1.0 (production 2, Char) allows nowhere, not even escaped, such as a stray control character. */
    static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints().forEach(code -> {
            if (isAllowed(code)) {
                clean.appendCodePoint(code);
            } else {
                clean.append(REPLACEMENT);
            }
        });
        return clean.toString();
    }

    /** Returns the text, or its beginning and an ellipsis when it has more than so many characters. */
    static String shortened(String text, int characters) {
        if (text.codePointCount(0, text.length()) <= characters) {
            return text;
        }
        return text.substring(0, text.offsetByCodePoints(0, characters - 1)) + "\u2026";
    }

    private static boolean isAllowed(int code) {
        if (code < 0x20) {
            return code == '\t' || code == '\n' || code == '\r';
        }
        return code <= 0xd7ff || code >= 0xe000 && code <= 0xfffd || code >= 0x10000;
    }
}
