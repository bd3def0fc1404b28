// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import org.ohmstead.measure.scpi.AnswerDoor;

/**
 * What an instrument answers: lines with numbers, texts and lists, and blocks of samples; also a command set, which is written by others
 * too. The input stands for all that comes from the instrument before it closes the link.
 */
public final class ScpiAnswers {
    private ScpiAnswers() {}

    /** Reads any bytes as each of them. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        for (AnswerDoor.Shape shape : AnswerDoor.Shape.values()) {
            AnswerDoor.refusal(input, shape).ifPresent(said -> Demand.that(!said.isBlank(), "refused without a word"));
        }
        AnswerDoor.refusedSet(Demand.text(input))
                .ifPresent(said -> Demand.that(!said.isBlank(), "refused without a word"));
    }
}
