// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ohmstead.units.text.Messages;

/** What the pages say, in the language spoken when they are asked for it. */
final class Texts {
    private static final Messages MESSAGES = Messages.of(Texts.class);

    private Texts() {}

    /** Returns a text with its arguments filled in. */
    static String text(String key, Object... arguments) {
        return MESSAGES.text(key, arguments);
    }

    /** Returns a text without arguments, or empty when there is none of this name. */
    static Optional<String> find(String key) {
        return MESSAGES.has(key) ? Optional.of(MESSAGES.text(key)) : Optional.empty();
    }

    /**
     * Returns a text that counts something: that of the key with ".one" or ".many" behind it.
     *
     * @param number stands for {0}
     * @param others stand for {1} and so on
     */
    static String counted(String key, int number, Object... others) {
        Object[] arguments = new Object[others.length + 1];
        arguments[0] = Integer.toString(number);
        System.arraycopy(others, 0, arguments, 1, others.length);
        return text(key + (number == 1 ? ".one" : ".many"), arguments);
    }

    /** Returns the name of the edit that changes a field: of "rating.powerWatts" it is "Set rating power". */
    static String edit(String field) {
        return text("edit." + field);
    }

    /** Returns what names the edits of a table's cells by the ids of their columns. */
    static UnaryOperator<String> edits(String row) {
        return column -> edit(row + "." + column);
    }
}
