// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How one sample is stored.
 *
 * @param floating true for floating point, false for a signed integer
 * @param bits bits of a sample: 16, 24, 32, or 64 (floating point only)
 */
record WavFormat(boolean floating, int bits) {
    private static final VarHandle LITTLE_ENDIAN =
            MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

    int bytes() {
        return bits / 8;
    }

    double fullScale() {
        return floating ? 1 : Math.scalb(1.0, bits - 1);
    }

    /** Reads one little-endian sample, with full scale at 1. */
    double get(ByteBuffer buffer, int index) {
        if (floating) {
            return bits == 64 ? buffer.getDouble(index) : buffer.getFloat(index);
        }
        return switch (bits) {
            case 16 -> buffer.getShort(index) / 0x1p15;
            case 24 -> ((buffer.get(index + 2) << 16) | (buffer.getShort(index) & 0xFFFF)) / 0x1p23;
            default -> buffer.getInt(index) / 0x1p31;
        };
    }

    /**
     * Reads the samples of one channel.
     *
     * @param buffer frames of all channels
     * @param first where the first sample of the channel lies
     * @param step bytes from one to the next
     * @param scale what full scale stands for
     * @param target where the samples go
     * @param from the first place there
     * @param count how many
     */
    void read(ByteBuffer buffer, int first, int step, double scale, double[] target, int from, int count) {
        int at = first;
        int i = 0;
        if (bits == 24) {
            byte[] bytes = buffer.array();
            double unit = scale / 0x1p23;
            // Four bytes in one, of which the highest belongs to the sample after; the last sample may have none.
            for (; i < count && at + Integer.BYTES <= bytes.length; i++) {
                target[from + i] = ((int) LITTLE_ENDIAN.get(bytes, at) << Byte.SIZE >> Byte.SIZE) * unit;
                at += step;
            }
        }
        for (; i < count; i++) {
            target[from + i] = get(buffer, at) * scale;
            at += step;
        }
    }

    /** Appends one little-endian sample, a whole number for integers. */
    void put(ByteBuffer buffer, double value) {
        if (floating) {
            buffer.putFloat((float) value);
            return;
        }
        int whole = (int) value;
        switch (bits) {
            case 16 -> buffer.putShort((short) whole);
            case 24 -> buffer.put((byte) whole).put((byte) (whole >> 8)).put((byte) (whole >> 16));
            default -> buffer.putInt(whole);
        }
    }

    String text() {
        return bits + (floating ? "-bit float" : "-bit integer");
    }
}
