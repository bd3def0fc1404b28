// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Comparator;
import java.util.Random;
import java.util.function.LongUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against the sort of the Java platform, which is stable for objects. */
class RowSortTest {
    private static final int MANY = 5000;

    private static void check(long[] keys) {
        long[] before = keys.clone();
        int[] expected = IntStream.range(0, keys.length)
                .boxed()
                .sorted(Comparator.comparingLong(place -> before[place]))
                .mapToInt(Integer::intValue)
                .toArray();
        assertArrayEquals(expected, RowSort.order(keys));
        assertArrayEquals(before, keys);
    }

    private static long[] made(LongUnaryOperator key) {
        return IntStream.range(0, MANY).mapToLong(key::applyAsLong).toArray();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 11, 12, 13, 24, 25, 40, 63, 64})
    void sortsKeysOfAnyWidth(int bits) {
        Random random = new Random(bits);
        check(made(at -> random.nextLong() >>> Long.SIZE - bits));
        check(made(at -> random.nextLong() >> Long.SIZE - bits));
    }

    @Test
    void sortsKeysWithGapsBetweenTheirBits() {
        Random random = new Random(5);
        check(made(at -> (long) random.nextInt(5) << 52 | random.nextInt(1000)));
        check(made(at -> (long) random.nextInt(1000) << 30));
        check(made(at -> random.nextBoolean() ? Long.MIN_VALUE : Long.MAX_VALUE));
        check(made(at -> Stream.of(-1L, 0L, 1L).toList().get(random.nextInt(3))));
    }

    @Test
    void keepsThePlacesOfEqualKeysAndOfThoseInOrder() {
        check(made(at -> 7));
        check(made(at -> at / 3));
        check(made(at -> -at));
        check(made(at -> at == MANY - 1 ? -1 : at));
        check(new long[0]);
        check(new long[] {3, 1, 2, 1});
    }
}
