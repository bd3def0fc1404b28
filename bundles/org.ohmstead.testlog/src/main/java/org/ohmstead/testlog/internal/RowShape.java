// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import org.ohmstead.testlog.EntryKind;

/** Whether the texts of a row have the form that they must have. The usual forms are known without making texts of the bytes. */
final class RowShape {
    private static final EntryKind[] KINDS = EntryKind.values();
    private static final byte[][] WORDS = Arrays.stream(KINDS)
            .map(kind -> kind.word().getBytes(StandardCharsets.US_ASCII))
            .toArray(byte[][]::new);
    private static final byte[] VOID_START = "{\"entryId\":\"".getBytes(StandardCharsets.US_ASCII);
    private static final String TIME_FORM = "0000-00-00T00:00:00";
    private static final int WITH_MILLIS = TIME_FORM.length() + 5;
    /** By month; the day that February has in some years only is left to the calendar. */
    private static final int[] LAST_DAYS = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

    private RowShape() {}

    /** Returns the kind that the bytes spell, or null when they spell none. */
    static EntryKind kind(byte[] word) {
        for (int at = 0; at < KINDS.length; at++) {
            if (Arrays.equals(WORDS[at], word)) {
                return KINDS[at];
            }
        }
        return null;
    }

    /** Returns the id that the body of a void begins with when it is as the log writes it, or null when it is not. */
    static String voidTarget(byte[] body) {
        int start = VOID_START.length;
        if (body.length <= start || !Arrays.equals(body, 0, start, VOID_START, 0, start)) {
            return null;
        }
        int end = start;
        while (end < body.length && (body[end] >= 'A' && body[end] <= 'Z' || isDigit(body[end]))) {
            end++;
        }
        boolean closed = end > start && end < body.length && body[end] == '"' && body[body.length - 1] == '}';
        return closed ? new String(body, start, end - start, StandardCharsets.US_ASCII) : null;
    }

    /** Returns whether a text is a moment in the one form that it is written in. */
    static boolean isTime(byte[] text) {
        return isUsualTime(text) || isAnyTime(RawRow.text(text));
    }

    private static boolean isAnyTime(String text) {
        try {
            return Instant.parse(text).toString().equals(text);
        } catch (DateTimeParseException wrong) {
            return false;
        }
    }

    private static boolean isUsualTime(byte[] text) {
        boolean length = text.length == TIME_FORM.length() + 1 || text.length == WITH_MILLIS;
        if (!length || text[text.length - 1] != 'Z' || !hasForm(text)) {
            return false;
        }
        int month = two(text, 5);
        int day = two(text, 8);
        boolean isDate = month >= 1 && month <= 12 && day >= 1 && day <= LAST_DAYS[month - 1];
        return isDate && two(text, 11) < 24 && two(text, 14) < 60 && two(text, 17) < 60 && hasUsualFraction(text);
    }

    private static boolean hasForm(byte[] text) {
        for (int at = 0; at < TIME_FORM.length(); at++) {
            char form = TIME_FORM.charAt(at);
            if (form == '0' ? !isDigit(text[at]) : text[at] != form) {
                return false;
            }
        }
        return true;
    }

    private static boolean hasUsualFraction(byte[] text) {
        if (text.length != WITH_MILLIS) {
            return true;
        }
        int point = TIME_FORM.length();
        boolean digits = isDigit(text[point + 1]) && isDigit(text[point + 2]) && isDigit(text[point + 3]);
        // A fraction of nothing is not written.
        boolean nothing = text[point + 1] == '0' && text[point + 2] == '0' && text[point + 3] == '0';
        return text[point] == '.' && digits && !nothing;
    }

    private static boolean isDigit(byte each) {
        return each >= '0' && each <= '9';
    }

    private static int two(byte[] text, int at) {
        return 10 * (text[at] - '0') + text[at + 1] - '0';
    }
}
