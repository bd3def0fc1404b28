// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.List;
import java.util.function.Function;
import org.ohmstead.units.text.Messages;

/**
 * How a cell is changed: by text, from choices, or by a check mark.
 *
 * @param kind which editor opens
 * @param text the text with which the editor opens and that is copied to the clipboard; {@link #with} accepts it
 * @param with returns the row with what the text says in place; throws an IllegalArgumentException whose message says what would do
 * @param choices the texts to choose from; empty unless the kind is {@link Kind#CHOICE}
 * @param <R> a row
 */
public record CellEdit<R>(Kind kind, Function<R, String> text, With<R> with, Function<R, List<String>> choices) {
    private static final Messages TEXTS = Messages.of(CellEdit.class);

    /** Which editor opens. */
    public enum Kind {
        /** A line of text. */
        TEXT,
        /** A list to choose from. */
        CHOICE,
        /** None: the mark is set or taken away at once. */
        CHECK
    }

    /**
     * Puts what a text says into a row.
     *
     * @param <R> a row
     */
    @FunctionalInterface
    public interface With<R> {
        /**
         * Returns the changed row.
         *
         * @throws IllegalArgumentException when the text is no such value; the message says what would be
         */
        R apply(R row, String text);
    }

    /** Returns the text of a check mark that is set. */
    public static String yes() {
        return TEXTS.text("check.yes");
    }

    /** Returns the text of a check mark that is not set. */
    public static String no() {
        return TEXTS.text("check.no");
    }
}
