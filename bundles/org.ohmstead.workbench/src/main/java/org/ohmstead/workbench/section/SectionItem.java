// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.section;

import java.util.Objects;

/**
 * An entry below a section in the project navigator, such as one rating or one load.
 *
 * @param label what the navigator shows, not blank
 * @param hover what it shows when the pointer rests on the entry; may be empty
 * @param where JSON path into the project that opening the entry goes to, such as {@code $.loads[2]}; not blank
 */
public record SectionItem(String label, String hover, String where) {
    public SectionItem {
        named(label, "label");
        Objects.requireNonNull(hover, "hover");
        named(where, "where");
    }

    private static void named(String value, String name) {
        if (value == null || value.isBlank()) {
            throw new IllegalArgumentException(name + " is blank; it needs a text");
        }
    }
}
