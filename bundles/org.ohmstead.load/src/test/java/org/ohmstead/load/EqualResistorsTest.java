// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class EqualResistorsTest {
    private static final Network UNIT = Network.of(Resistor.of("1", 1, 0));

    /** A fraction in lowest terms; with a dozen equal resistors its terms stay far below the range of long. */
    private record Fraction(long over, long under) {
        static Fraction of(long over, long under) {
            long divisor = divisor(over, under);
            return new Fraction(over / divisor, under / divisor);
        }

        private static long divisor(long one, long other) {
            return other == 0 ? one : divisor(other, one % other);
        }

        Fraction plus(Fraction other) {
            return of(over * other.under + other.over * under, under * other.under);
        }

        Fraction inverse() {
            return new Fraction(under, over);
        }
    }

    private static List<Map<Fraction, Network>> upTo(int most) {
        List<Map<Fraction, Network>> byCount = new ArrayList<>();
        byCount.add(Map.of());
        byCount.add(Map.of(new Fraction(1, 1), UNIT));
        for (int count = 2; count <= most; count++) {
            Map<Fraction, Network> values = new LinkedHashMap<>();
            for (int left = 1; left <= count / 2; left++) {
                for (Map.Entry<Fraction, Network> one : byCount.get(left).entrySet()) {
                    for (Map.Entry<Fraction, Network> other :
                            byCount.get(count - left).entrySet()) {
                        List<Network> both = List.of(one.getValue(), other.getValue());
                        values.computeIfAbsent(one.getKey().plus(other.getKey()), value -> Network.series(both));
                        values.computeIfAbsent(
                                one.getKey()
                                        .inverse()
                                        .plus(other.getKey().inverse())
                                        .inverse(),
                                value -> Network.parallel(both));
                    }
                }
            }
            byCount.add(values);
        }
        return byCount;
    }

    @Test
    void giveAsManyValuesAsOeisA048211Lists() {
        List<Integer> counts = upTo(12).stream().skip(1).map(Map::size).toList();
        assertEquals(List.of(1, 2, 4, 9, 22, 53, 131, 337, 869, 2213, 5691, 14517), counts);
    }

    @Test
    void giveAsManyValuesWithFewerTooAsOeisA153588Lists() {
        List<Map<Fraction, Network>> byCount = upTo(9);
        List<Integer> counts = new ArrayList<>();
        Set<Fraction> all = new HashSet<>();
        for (int count = 1; count <= 9; count++) {
            all.addAll(byCount.get(count).keySet());
            counts.add(all.size());
        }
        assertEquals(List.of(1, 3, 7, 15, 35, 77, 179, 429, 1039), counts);
    }

    @Test
    void giveTheNineValuesOfFour() {
        Set<Double> values = new TreeSet<>();
        upTo(4).get(4).values().forEach(network -> values.add(Math.rint(network.ohms() * 1e9) / 1e9));
        assertEquals(new TreeSet<>(Set.of(0.25, 0.4, 0.6, 0.75, 1.0, 1.333333333, 1.666666667, 2.5, 4.0)), values);
    }

    @Test
    void areAddedUpAsFractionsAreAndReadBack() throws NotationException {
        for (Map.Entry<Fraction, Network> entry : upTo(8).get(8).entrySet()) {
            double exact = entry.getKey().over() / (double) entry.getKey().under();
            assertEquals(exact, entry.getValue().ohms(), 1e-14 * exact);
            NetworkNotation.Options plain = NetworkNotation.Options.USUAL.withToleranceRatio(0);
            assertEquals(
                    entry.getValue(),
                    NetworkNotation.parse(NetworkNotation.format(entry.getValue()), Stock.EMPTY, plain));
        }
    }
}
