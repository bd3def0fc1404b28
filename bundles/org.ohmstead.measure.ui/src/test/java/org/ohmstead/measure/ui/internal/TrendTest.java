// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static List<Trend.Sample> samples(int count, DoubleUnaryOperator value) {
        return IntStream.range(0, count)
                .mapToObj(second -> new Trend.Sample(second, value.applyAsDouble(second)))
                .toList();
    }

    @Test
    void aStraightLineRisesOrFallsAsItsSlopeSays() {
        assertEquals(Trend.RISING, Trend.of(samples(10, second -> 20 + 0.5 * second)));
        assertEquals(Trend.FALLING, Trend.of(samples(10, second -> 20 - 0.5 * second)));
    }

    @Test
    void whatScattersMoreThanItChangesIsSteady() {
        // Up and down by 1 around a slope of 0.01 for each second.
        assertEquals(Trend.STEADY, Trend.of(samples(12, second -> 50 + 0.01 * second + (second % 2 == 0 ? 1 : -1))));
    }

    @Test
    void aChangeThatNobodyCaresForIsSteady() {
        // 0.011 V in 14.4 V is less than 0.3 %.
        assertEquals(Trend.STEADY, Trend.of(samples(12, second -> 14.4 + 0.001 * second)));
    }

    @Test
    void fewValuesOrNoTimeSayNothing() {
        assertEquals(Trend.UNKNOWN, Trend.of(samples(3, second -> second)));
        assertEquals(
                Trend.UNKNOWN,
                Trend.of(IntStream.range(0, 6)
                        .mapToObj(each -> new Trend.Sample(7, each))
                        .toList()));
    }
}
