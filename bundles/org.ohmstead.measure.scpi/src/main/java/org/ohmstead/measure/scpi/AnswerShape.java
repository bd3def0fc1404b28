// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.nio.ByteOrder;

/** What the answer to a query of a command set looks like. */
sealed interface AnswerShape {
    /** The digit 1, when all is done. */
    record Ready() implements AnswerShape {}

    /**
     * A number.
     *
     * @param field which of the fields between commas, from 1
     * @param factor what it is multiplied by
     */
    record Number(int field, double factor) implements AnswerShape {}

    /** Numbers between commas. */
    record Numbers() implements AnswerShape {}

    /** A block. */
    record Block(BlockFormat format, ByteOrder order) implements AnswerShape {}
}
