// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.util.Objects;
import org.ohmstead.units.text.Messages;

/**
 * Something in a table that keeps a row from becoming a reading.
 *
 * @param line line of the text, or row of the sheet, from 1
 * @param column heading of the column; empty when the row as a whole is at fault
 * @param sentence what is wrong and what would be right
 */
public record ImportFault(long line, String column, String sentence) {
    private static final Messages TEXTS = Messages.of(ImportFault.class);
    /** Checks that nothing is missing. */
    public ImportFault {
        Objects.requireNonNull(column, "column");
        Objects.requireNonNull(sentence, "sentence");
    }

    /** Returns the place and the sentence as one text. */
    public String text() {
        return column.isEmpty()
                ? TEXTS.text("fault.row", line, sentence)
                : TEXTS.text("fault.cell", line, column, sentence);
    }
}
