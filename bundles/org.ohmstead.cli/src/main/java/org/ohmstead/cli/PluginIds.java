// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Finds plug-ins by what people type: the whole id, its last parts, or any one of its parts. */
final class PluginIds {
    private PluginIds() {}

    /**
     * Returns the one that is meant.
     *
     * @param all to choose from
     * @param id tells the id of one
     * @param wanted what was typed
     * @param kind what they are, such as "bench driver"
     * @throws InputException when none is meant, or several are
     */
    static <T> T find(List<T> all, Function<T, String> id, String wanted, String kind) throws InputException {
        String text = wanted.strip();
        List<Predicate<String>> ways =
                List.of(each -> each.equals(text), each -> each.endsWith("." + text), each -> List.of(each.split("\\."))
                        .contains(text));
        for (Predicate<String> way : ways) {
            List<T> meant =
                    all.stream().filter(each -> way.test(id.apply(each))).toList();
            if (meant.size() == 1) {
                return meant.get(0);
            }
            if (meant.size() > 1) {
                throw new InputException(Texts.of("plugins.several." + kind, text, names(meant, id)));
            }
        }
        throw new InputException(
                all.isEmpty()
                        ? Texts.of("plugins.none." + kind, text)
                        : Texts.of("plugins.unknown." + kind, text, names(all, id)));
    }

    private static <T> String names(List<T> some, Function<T, String> id) {
        return some.stream().map(id).collect(Collectors.joining(", "));
    }
}
