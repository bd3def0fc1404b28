// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.ohmstead.testlog.ClockStep;

/** Tells where time runs backwards in what was checked. */
final class ClockWords {
    /** So many places are told of in sentences. */
    static final int SHOWN = 5;

    private ClockWords() {}

    /** Says how many places there are, and names some. */
    static void fill(ObjectNode root, long count, List<ClockStep> some) {
        ObjectNode clock = root.putObject("clockWentBack").put("count", count);
        ArrayNode places = clock.putArray("first");
        some.forEach(step -> places.addObject()
                .put("sequence", step.sequence())
                .put("id", step.entryId())
                .put("sentence", step.sentence()));
    }

    /** Prints the first few of so many places, each a sentence, and in a text of its own how many more there are. */
    static void print(Console console, long count, List<ClockStep> some, String moreText) {
        some.stream().limit(SHOWN).forEach(step -> console.line(step.sentence()));
        if (count > SHOWN) {
            console.line(Texts.of(moreText, count - SHOWN));
        }
    }
}
