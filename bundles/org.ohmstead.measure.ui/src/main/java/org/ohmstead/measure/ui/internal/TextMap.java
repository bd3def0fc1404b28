// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Texts by name as one line of text, each percent-encoded as in the query of an address. */
final class TextMap {
    private TextMap() {}

    static String write(Map<String, String> map) {
        return new TreeMap<>(map)
                .entrySet().stream()
                        .map(each -> encoded(each.getKey()) + "=" + encoded(each.getValue()))
                        .collect(Collectors.joining("&"));
    }

    /** Reads what {@link #write} wrote; a part that is none is passed over. */
    static Map<String, String> read(String line) {
        Map<String, String> map = new TreeMap<>();
        for (String part : line.split("&")) {
            int sign = part.indexOf('=');
            if (sign > 0) {
                map.put(decoded(part.substring(0, sign)), decoded(part.substring(sign + 1)));
            }
        }
        return map;
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String decoded(String text) {
        try {
            return URLDecoder.decode(text, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException notOurs) {
            return text;
        }
    }
}
