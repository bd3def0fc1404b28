// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.Arrays;
import java.util.Locale;

/** How the values of enums are spelled in files. */
final class EnumNames {
    /** Of each enum, as they are asked for with each entry of a log. */
    private static final ClassValue<String[]> NAMES = new ClassValue<>() {
        @Override
        protected String[] computeValue(Class<?> type) {
            return Arrays.stream(type.getEnumConstants())
                    .map(value -> camelCase(((Enum<?>) value).name()))
                    .toArray(String[]::new);
        }
    };

    private EnumNames() {}

    /** Returns the name in camel case: {@code HEAT_SINK_WITH_FAN} becomes {@code heatSinkWithFan}. */
    static String of(Enum<?> value) {
        return NAMES.get(value.getDeclaringClass())[value.ordinal()];
    }

    private static String camelCase(String constant) {
        StringBuilder name = new StringBuilder();
        for (String word : constant.toLowerCase(Locale.ROOT).split("_")) {
            name.append(
                            name.isEmpty()
                                    ? word.substring(0, 1)
                                    : word.substring(0, 1).toUpperCase(Locale.ROOT))
                    .append(word.substring(1));
        }
        return name.toString();
    }
}
