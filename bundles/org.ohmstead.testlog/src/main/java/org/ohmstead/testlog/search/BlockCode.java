// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32C;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * Blocks of the index as bytes: a checksum, which also depends on the making of the index, and what is in the block. Whole numbers are
 * stored as their distance from the least, each in as few bytes as the greatest needs.
 */
final class BlockCode {
    private static final int CHECK_BYTES = 8;
    /** More room than the format takes at most, whatever is packed. */
    private static final int PACK_BYTES = 64;
    /** Packing makes things at most so many times smaller. */
    private static final int MOST_PACKED = 1100;

    private static final int NUMBERS_HEADER = Integer.BYTES + 1 + Long.BYTES;

    private BlockCode() {}

    /** A block is not what was written. */
    static final class DamagedException extends Exception {
        private static final long serialVersionUID = 1L;

        DamagedException(String message) {
            super(message);
        }

        DamagedException(String message, Throwable cause) {
            super(message, cause);
        }
    }

    static byte[] numbers(long[] values, int count) {
        long least = Long.MAX_VALUE;
        long most = Long.MIN_VALUE;
        for (int at = 0; at < count; at++) {
            least = Math.min(least, values[at]);
            most = Math.max(most, values[at]);
        }
        int width = count == 0 ? 0 : width(most - least);
        ByteBuffer out = ByteBuffer.allocate(CHECK_BYTES + NUMBERS_HEADER + count * width);
        out.position(CHECK_BYTES);
        out.putInt(count).put((byte) width).putLong(least);
        for (int at = 0; at < count; at++) {
            put(out, values[at] - least, width);
        }
        return out.array();
    }

    private static int width(long span) {
        if (span == 0) {
            return 0;
        }
        if (span > 0 && span <= 0xFF) {
            return 1;
        }
        if (span > 0 && span <= 0xFFFF) {
            return 2;
        }
        return span > 0 && span <= Integer.MAX_VALUE ? 4 : 8;
    }

    private static void put(ByteBuffer out, long value, int width) {
        switch (width) {
            case 0 -> {
                return;
            }
            case 1 -> out.put((byte) value);
            case 2 -> out.putShort((short) value);
            case 4 -> out.putInt((int) value);
            default -> out.putLong(value);
        }
    }

    static long[] numbers(byte[] block) throws DamagedException {
        try {
            ByteBuffer in = ByteBuffer.wrap(block, CHECK_BYTES, block.length - CHECK_BYTES);
            int count = in.getInt();
            int width = in.get();
            long least = in.getLong();
            if (count < 0 || (long) count * width > in.remaining()) {
                throw new DamagedException("a block of " + count + " numbers");
            }
            long[] values = new long[count];
            fill(values, in, width, least);
            return values;
        } catch (BufferUnderflowException | IndexOutOfBoundsException | IllegalArgumentException tooShort) {
            throw new DamagedException("a block of numbers that is too short", tooShort);
        }
    }

    private static void fill(long[] values, ByteBuffer in, int width, long least) {
        switch (width) {
            case 0 -> Arrays.fill(values, least);
            case 1 -> fillFromBytes(values, in, least);
            case 2 -> fillFromShorts(values, in, least);
            case 4 -> fillFromInts(values, in, least);
            default -> fillFromLongs(values, in, least);
        }
    }

    private static void fillFromBytes(long[] values, ByteBuffer in, long least) {
        for (int at = 0; at < values.length; at++) {
            values[at] = least + (in.get() & 0xFF);
        }
    }

    private static void fillFromShorts(long[] values, ByteBuffer in, long least) {
        for (int at = 0; at < values.length; at++) {
            values[at] = least + (in.getShort() & 0xFFFF);
        }
    }

    private static void fillFromInts(long[] values, ByteBuffer in, long least) {
        for (int at = 0; at < values.length; at++) {
            values[at] = least + in.getInt();
        }
    }

    private static void fillFromLongs(long[] values, ByteBuffer in, long least) {
        for (int at = 0; at < values.length; at++) {
            values[at] = least + in.getLong();
        }
    }

    static byte[] words(List<String> words) {
        byte[][] folded = new byte[words.size()][];
        byte[][] plain = new byte[words.size()][];
        int bytes = CHECK_BYTES + Integer.BYTES;
        for (int at = 0; at < folded.length; at++) {
            plain[at] = words.get(at).getBytes(StandardCharsets.UTF_8);
            folded[at] = fold(words.get(at));
            bytes += 2 * Integer.BYTES + plain[at].length + folded[at].length;
        }
        ByteBuffer out = ByteBuffer.allocate(bytes);
        out.position(CHECK_BYTES);
        out.putInt(folded.length);
        putAll(out, folded);
        putAll(out, plain);
        return out.array();
    }

    private static void putAll(ByteBuffer out, byte[][] texts) {
        for (byte[] text : texts) {
            out.putInt(text.length);
        }
        for (byte[] text : texts) {
            out.put(text);
        }
    }

    /** Returns the form of a text in which small and capital letters are alike. */
    static byte[] fold(String text) {
        return text.toLowerCase(Locale.ROOT).getBytes(StandardCharsets.UTF_8);
    }

    static Words words(byte[] block) throws DamagedException {
        try {
            ByteBuffer in = ByteBuffer.wrap(block, CHECK_BYTES, block.length - CHECK_BYTES);
            int count = in.getInt();
            int[] foldedEnds = ends(in, count);
            int foldedStart = passed(in, foldedEnds);
            int[] plainEnds = ends(in, count);
            int plainStart = passed(in, plainEnds);
            return new Words(block, new Words.Places(foldedStart, foldedEnds), new Words.Places(plainStart, plainEnds));
        } catch (BufferUnderflowException
                | IndexOutOfBoundsException
                | ArithmeticException
                | IllegalArgumentException tooShort) {
            throw new DamagedException("a block of words that is too short", tooShort);
        }
    }

    /** Goes behind some texts; returns where they start. */
    private static int passed(ByteBuffer in, int[] ends) {
        int start = in.position();
        in.position(start + (ends.length == 0 ? 0 : ends[ends.length - 1]));
        return start;
    }

    private static int[] ends(ByteBuffer in, int count) throws DamagedException {
        if (count < 0 || count > in.remaining() / Integer.BYTES) {
            throw new DamagedException("a block of " + count + " words");
        }
        int[] ends = new int[count];
        int end = 0;
        for (int at = 0; at < count; at++) {
            int length = in.getInt();
            if (length < 0) {
                throw new DamagedException("a word of " + length + " bytes");
            }
            end = Math.addExact(end, length);
            ends[at] = end;
        }
        return ends;
    }

    /** Returns a block of bytes in which what comes again takes little room. */
    static byte[] pack(byte[] content) {
        Deflater deflater = new Deflater(Deflater.BEST_SPEED, true);
        try {
            deflater.setInput(content);
            deflater.finish();
            byte[] packed = new byte[CHECK_BYTES + Integer.BYTES + content.length + content.length / 8 + PACK_BYTES];
            int at = CHECK_BYTES + Integer.BYTES;
            ByteBuffer.wrap(packed).putInt(CHECK_BYTES, content.length);
            while (!deflater.finished()) {
                at += deflater.deflate(packed, at, packed.length - at);
            }
            return Arrays.copyOf(packed, at);
        } finally {
            deflater.end();
        }
    }

    /** Returns the bytes that {@link #pack} made a block of. */
    static byte[] packed(byte[] block) throws DamagedException {
        Inflater inflater = new Inflater(true);
        try {
            int length = ByteBuffer.wrap(block).getInt(CHECK_BYTES);
            int start = CHECK_BYTES + Integer.BYTES;
            if (length < 0 || length > MOST_PACKED * (long) block.length) {
                throw new DamagedException("a packed block of " + length + " bytes");
            }
            byte[] content = new byte[length];
            inflater.setInput(block, start, block.length - start);
            if (inflater.inflate(content) != length) {
                throw new DamagedException("a packed block that is too short");
            }
            return content;
        } catch (DataFormatException | IndexOutOfBoundsException | IllegalArgumentException wrong) {
            throw new DamagedException("a packed block that cannot be unpacked", wrong);
        } finally {
            inflater.end();
        }
    }

    /** Writes the checksum into a block. */
    static byte[] seal(byte[] block, long making, long id) {
        ByteBuffer.wrap(block).putLong(checksum(block, making, id));
        return block;
    }

    /** Returns a block whose checksum is right. */
    static byte[] opened(byte[] block, long making, long id) throws DamagedException {
        if (block.length < CHECK_BYTES || ByteBuffer.wrap(block).getLong() != checksum(block, making, id)) {
            throw new DamagedException("a block whose checksum is wrong");
        }
        return block;
    }

    private static long checksum(byte[] block, long making, long id) {
        CRC32C checksum = new CRC32C();
        checksum.update(
                ByteBuffer.allocate(2 * Long.BYTES).putLong(making).putLong(id).flip());
        checksum.update(block, CHECK_BYTES, block.length - CHECK_BYTES);
        return checksum.getValue();
    }
}
