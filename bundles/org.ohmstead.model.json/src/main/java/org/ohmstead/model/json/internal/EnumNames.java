// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.Locale;

/** How the values of enums are spelled in files. */
final class EnumNames {
    private EnumNames() {}

    /** Returns the name in camel case: {@code HEAT_SINK_WITH_FAN} becomes {@code heatSinkWithFan}. */
    static String of(Enum<?> value) {
        StringBuilder name = new StringBuilder();
        for (String word : value.name().toLowerCase(Locale.ROOT).split("_")) {
            name.append(
                            name.isEmpty()
                                    ? word.substring(0, 1)
                                    : word.substring(0, 1).toUpperCase(Locale.ROOT))
                    .append(word.substring(1));
        }
        return name.toString();
    }
}
