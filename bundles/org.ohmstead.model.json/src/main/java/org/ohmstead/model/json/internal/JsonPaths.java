// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.regex.Pattern;

/** Spells JSON paths as in RFC 9535: {@code $.loads[0].ohms}, with {@code ['...']} for names that are not plain words. */
final class JsonPaths {
    static final String ROOT = "$";

    private static final Pattern PLAIN = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*");

    private JsonPaths() {}

    static String field(String path, String name) {
        if (PLAIN.matcher(name).matches()) {
            return path + "." + name;
        }
        return path + "['" + name.replace("\\", "\\\\").replace("'", "\\'") + "']";
    }

    static String entry(String path, int index) {
        return path + "[" + index + "]";
    }
}
