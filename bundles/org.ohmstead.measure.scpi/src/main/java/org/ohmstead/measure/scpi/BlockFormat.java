// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.ohmstead.units.text.Messages;

/** How a block holds samples. */
enum BlockFormat {
    INT8("int8", 1, true, ByteBuffer::get),
    UINT8("uint8", 1, true, buffer -> buffer.get() & 0xff),
    INT16("int16", 2, true, ByteBuffer::getShort),
    UINT16("uint16", 2, true, buffer -> buffer.getShort() & 0xffff),
    INT32("int32", 4, true, ByteBuffer::getInt),
    FLOAT32("float32", 4, false, ByteBuffer::getFloat),
    FLOAT64("float64", 8, false, ByteBuffer::getDouble);

    private static final Messages TEXTS = Messages.of(BlockFormat.class);
    private final String word;
    private final int bytes;
    private final boolean counts;
    private final ToDoubleFunction<ByteBuffer> taking;

    BlockFormat(String word, int bytes, boolean counts, ToDoubleFunction<ByteBuffer> taking) {
        this.word = word;
        this.bytes = bytes;
        this.counts = counts;
        this.taking = taking;
    }

    static Optional<BlockFormat> of(String word) {
        return Arrays.stream(values())
                .filter(format -> format.word.equals(word))
                .findFirst();
    }

    static String words() {
        return Arrays.stream(values()).map(format -> format.word).collect(Collectors.joining(", "));
    }

    /** Returns whether the samples are counts of a converter, not volts. */
    boolean counts() {
        return counts;
    }

    double[] samples(byte[] block, ByteOrder order) throws AnswerFault {
        if (block.length == 0 || block.length % bytes != 0) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP,
                    () -> TEXTS.text("answer.oddBlock", String.valueOf(block.length), String.valueOf(bytes)),
                    () -> TEXTS.text("answer.oddBlock.remedy"));
        }
        ByteBuffer buffer = ByteBuffer.wrap(block).order(order);
        double[] samples = new double[block.length / bytes];
        for (int i = 0; i < samples.length; i++) {
            double sample = taking.applyAsDouble(buffer);
            samples[i] = counts ? sample : Answer.sound(sample);
        }
        return samples;
    }
}
