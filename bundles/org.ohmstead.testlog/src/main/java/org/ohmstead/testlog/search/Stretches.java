// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Does the same with each stretch of the index, on all processors; few stretches are not worth that. */
final class Stretches {
    private static final int FEW = 8;

    private Stretches() {}

    /** Does something with each of so many stretches; returns when all is done. */
    static void each(int stretches, IntConsumer work) {
        IntStream all = IntStream.range(0, stretches);
        (stretches < FEW ? all : all.parallel()).forEach(work);
    }
}
