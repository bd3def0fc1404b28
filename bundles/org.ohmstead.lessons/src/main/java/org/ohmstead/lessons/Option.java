// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;

/**
 * One of several things to choose from.
 *
 * @param id what files and command lines call it: small letters, digits and hyphens
 * @param text what people read
 */
public record Option(String id, String text) {
    /** Checks the texts. */
    public Option {
        Checks.id(id, "id");
        Checks.named(text, "text");
    }

    static void requireDifferent(List<Option> options) {
        long different = options.stream().map(Option::id).distinct().count();
        if (options.size() < 2 || different < options.size()) {
            throw new IllegalArgumentException(
                    "options are " + options + "; they must be at least two with different ids");
        }
    }
}
