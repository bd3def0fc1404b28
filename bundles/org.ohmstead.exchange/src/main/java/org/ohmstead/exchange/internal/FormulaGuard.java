// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

/**
 * Keeps spreadsheets from taking a text for a formula: one that begins with = + - @, a tab or a line break, after any apostrophes, gets
 * one apostrophe more in front. On the way in one is taken away again, so that every text comes back as it was.
 */
public final class FormulaGuard {
    private static final String BEGINNINGS = "=+-@\t\r\n";
    private static final char APOSTROPHE = '\'';

    private FormulaGuard() {}

    /** Returns the text as it may stand in a cell. */
    public static String guarded(String text) {
        return dangerous(text) ? APOSTROPHE + text : text;
    }

    /** Returns the text that a cell stands for. */
    public static String unguarded(String cell) {
        return cell.length() > 1 && cell.charAt(0) == APOSTROPHE && dangerous(cell) ? cell.substring(1) : cell;
    }

    private static boolean dangerous(String text) {
        int first = 0;
        while (first < text.length() && text.charAt(first) == APOSTROPHE) {
            first++;
        }
        return first < text.length() && BEGINNINGS.indexOf(text.charAt(first)) >= 0;
    }
}
