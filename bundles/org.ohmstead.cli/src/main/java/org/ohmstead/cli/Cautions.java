// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** What is to be said beside temperatures, cables, fuses and batteries, for people and for machines. */
final class Cautions {
    private Cautions() {}

    static void print(Console console, List<String> cautions) {
        console.line("");
        console.line(Texts.of("cautions.line", String.join(" ", cautions)));
    }

    static void put(ObjectNode root, List<String> cautions) {
        ArrayNode list = root.putArray("cautions");
        cautions.forEach(list::add);
    }
}
