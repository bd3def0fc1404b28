// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.util.Objects;

/**
 * Something in a table that keeps a row from becoming a reading.
 *
 * @param line line of the text, or row of the sheet, from 1
 * @param column heading of the column; empty when the row as a whole is at fault
 * @param sentence what is wrong and what would be right
 */
public record ImportFault(long line, String column, String sentence) {
    /** Checks that nothing is missing. */
    public ImportFault {
        Objects.requireNonNull(column, "column");
        Objects.requireNonNull(sentence, "sentence");
    }

    /** Returns the place and the sentence as one text. */
    public String text() {
        return "Line " + line + (column.isEmpty() ? "" : ", column \"" + column + "\"") + ": " + sentence;
    }
}
