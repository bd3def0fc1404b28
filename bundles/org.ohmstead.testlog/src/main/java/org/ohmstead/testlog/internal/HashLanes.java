// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * SHA-256 (FIPS 180-4) of many messages side by side, each in a lane of its own, so that the processor's vectors take 8 or 16 of them at a
 * time. The platform's digest takes one message at a time, as the libraries do that were looked at; on a processor without instructions
 * for it, that is three times slower, and a long log is mostly hashing.
 *
 * <p>Loops are kept to what Java's compiler turns into vectors. It does not where a value is rotated three times, so that the rotations of
 * a sum stand within each other.
 */
final class HashLanes {
    /** So many messages at most; the arrays of all their words still fit into the nearer memory of a processor. */
    static final int LANES = 512;

    private static final VarHandle BIG_ENDIAN = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.BIG_ENDIAN);
    private static final VarHandle BIG_ENDIAN_LONG =
            MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);
    private static final int WORDS = 8;
    private static final int BLOCK_WORDS = 16;
    private static final int BLOCK_BYTES = 64;
    private static final int ROUNDS = 64;
    private static final byte END_MARK = (byte) 0x80;

    /** What stands behind a message at least: the mark and the length. */
    private static final int LEAST_PADDING = 1 + Long.BYTES;

    private static final int[] PRIMES = IntStream.rangeClosed(2, 311)
            .filter(number -> IntStream.range(2, number).allMatch(divisor -> number % divisor != 0))
            .toArray();

    /** FIPS 180-4, 5.3.3: of the square roots of the first 8 primes, the first 32 bits behind the point. */
    private static final int[] FIRST_HASH = Arrays.stream(PRIMES)
            .limit(WORDS)
            .map(prime -> fraction(Math.sqrt(prime)))
            .toArray();

    /** FIPS 180-4, 4.2.2: of the cube roots of the first 64 primes, the first 32 bits behind the point. */
    private static final int[] CONSTANTS =
            Arrays.stream(PRIMES).map(prime -> fraction(StrictMath.cbrt(prime))).toArray();

    private final int[][] hash = new int[WORDS][LANES];
    private final int[][] mixed = new int[WORDS][LANES];
    private final int[][] words = new int[BLOCK_WORDS][LANES];
    private final int[] begins = new int[LANES];
    private byte[] padded = new byte[0];

    /** What is hashed. */
    interface Message {
        /** Returns the length in bytes. */
        int length();

        /** Copies all bytes to an array, from a place on. */
        void copyTo(byte[] target, int at);
    }

    /** Takes the hash of a message. */
    @FunctionalInterface
    interface Taker {
        /**
         * Takes it.
         *
         * @param message which message
         * @param hash its 32 bytes; only until this returns
         */
        void take(int message, byte[] hash);
    }

    /** Returns how many blocks of 64 bytes a message of a length in bytes takes. */
    static int blocks(int length) {
        return (length + LEAST_PADDING + BLOCK_BYTES - 1) / BLOCK_BYTES;
    }

    /**
     * Hashes messages, the longest first.
     *
     * @param messages at most {@link #LANES}, none with more blocks than the one before it; together less than 1 GiB
     * @param taker takes each hash, in no certain order
     */
    void hash(List<? extends Message> messages, Taker taker) {
        put(messages);
        for (int word = 0; word < WORDS; word++) {
            Arrays.fill(hash[word], FIRST_HASH[word]);
        }
        byte[] bytes = new byte[WORDS * Integer.BYTES];
        int lanes = messages.size();
        for (int block = 0; lanes > 0; block++) {
            for (int lane = 0; lane < lanes; lane++) {
                load(begins[lane] + block * BLOCK_BYTES, lane);
            }
            mix(lanes);
            while (lanes > 0 && blocks(messages.get(lanes - 1).length()) == block + 1) {
                lanes--;
                for (int word = 0; word < WORDS; word++) {
                    BIG_ENDIAN.set(bytes, word * Integer.BYTES, hash[word][lanes]);
                }
                taker.take(lanes, bytes);
            }
        }
    }

    private static int fraction(double root) {
        return (int) (long) Math.scalb(root - Math.floor(root), Integer.SIZE);
    }

    /** Puts the messages one behind the other, each with its padding (FIPS 180-4, 5.1.1). */
    private void put(List<? extends Message> messages) {
        int total = messages.stream()
                .mapToInt(message -> blocks(message.length()) * BLOCK_BYTES)
                .sum();
        if (padded.length < total) {
            padded = new byte[total + total / 4];
        }
        int at = 0;
        for (int lane = 0; lane < messages.size(); lane++) {
            Message message = messages.get(lane);
            int end = at + blocks(message.length()) * BLOCK_BYTES;
            begins[lane] = at;
            message.copyTo(padded, at);
            Arrays.fill(padded, at + message.length(), end, (byte) 0);
            padded[at + message.length()] = END_MARK;
            BIG_ENDIAN_LONG.set(padded, end - Long.BYTES, (long) Byte.SIZE * message.length());
            at = end;
        }
    }

    private void load(int at, int lane) {
        for (int word = 0; word < BLOCK_WORDS; word++) {
            words[word][lane] = (int) BIG_ENDIAN.get(padded, at + word * Integer.BYTES);
        }
    }

    /** FIPS 180-4, 6.2.2; the working variables change their names from round to round instead of being moved. */
    private void mix(int lanes) {
        for (int word = 0; word < WORDS; word++) {
            System.arraycopy(hash[word], 0, mixed[word], 0, lanes);
        }
        for (int round = 0; round < ROUNDS; round++) {
            if (round >= BLOCK_WORDS) {
                schedule(word(round), word(round + 1), word(round + 9), word(round + 14), lanes);
            }
            int[] a = variable(round, 0);
            int[] e = variable(round, 4);
            int[] h = variable(round, 7);
            choose(h, e, variable(round, 5), variable(round, 6), lanes);
            add(h, word(round), CONSTANTS[round], lanes);
            add(variable(round, 3), h, 0, lanes);
            agree(h, a, variable(round, 1), variable(round, 2), lanes);
        }
        for (int word = 0; word < WORDS; word++) {
            add(hash[word], mixed[word], 0, lanes);
        }
    }

    private int[] word(int round) {
        return words[round % BLOCK_WORDS];
    }

    private int[] variable(int round, int which) {
        return mixed[(ROUNDS - round + which) % WORDS];
    }

    /** The next word of the schedule takes the place of the one 16 before it. */
    private static void schedule(int[] before16, int[] before15, int[] before7, int[] before2, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            int x = before15[lane];
            int y = before2[lane];
            before16[lane] += (Integer.rotateRight(x, 7) ^ Integer.rotateRight(x, 18) ^ (x >>> 3))
                    + before7[lane]
                    + (Integer.rotateRight(y, 17) ^ Integer.rotateRight(y, 19) ^ (y >>> 10));
        }
    }

    /** Adds the sum of e turned by 6, 11 and 25, and Ch(e, f, g). */
    private static void choose(int[] h, int[] e, int[] f, int[] g, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            int x = e[lane];
            h[lane] += Integer.rotateRight(x ^ Integer.rotateRight(x ^ Integer.rotateRight(x, 14), 5), 6)
                    + (g[lane] ^ (x & (f[lane] ^ g[lane])));
        }
    }

    /** Adds the sum of a turned by 2, 13 and 22, and Maj(a, b, c). */
    private static void agree(int[] h, int[] a, int[] b, int[] c, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            int x = a[lane];
            h[lane] += Integer.rotateRight(x ^ Integer.rotateRight(x ^ Integer.rotateRight(x, 9), 11), 2)
                    + ((x & b[lane]) ^ (c[lane] & (x ^ b[lane])));
        }
    }

    private static void add(int[] sum, int[] summand, int constant, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            sum[lane] += summand[lane] + constant;
        }
    }
}
