// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.ohmstead.load.Network;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;

/** Every series-parallel network of every choice of pieces, with exact fractions; nothing is shared with the search but the networks. */
final class BruteForce {
    /** A fraction in lowest terms. */
    record Exact(BigInteger top, BigInteger bottom) implements Comparable<Exact> {
        static Exact of(BigInteger top, BigInteger bottom) {
            BigInteger divisor = top.gcd(bottom);
            return new Exact(top.divide(divisor), bottom.divide(divisor));
        }

        static Exact of(double ohms) {
            BigDecimal decimal = new BigDecimal(Double.toString(ohms)).setScale(24);
            return of(decimal.unscaledValue(), BigInteger.TEN.pow(24));
        }

        static Exact of(Network network) {
            if (network instanceof Network.Series series) {
                return series.members().stream()
                        .map(Exact::of)
                        .reduce(Exact::plus)
                        .orElseThrow();
            }
            if (network instanceof Network.Parallel parallel) {
                return parallel.members().stream()
                        .map(member -> of(member).inverse())
                        .reduce(Exact::plus)
                        .orElseThrow()
                        .inverse();
            }
            return of(((Network.Single) network).resistor().ohms());
        }

        Exact plus(Exact other) {
            return of(top.multiply(other.bottom).add(other.top.multiply(bottom)), bottom.multiply(other.bottom));
        }

        Exact inverse() {
            return new Exact(bottom, top);
        }

        Exact times(Exact other) {
            return of(top.multiply(other.top), bottom.multiply(other.bottom));
        }

        Exact distanceTo(Exact other) {
            return of(
                    top.multiply(other.bottom)
                            .subtract(other.top.multiply(bottom))
                            .abs(),
                    bottom.multiply(other.bottom));
        }

        @Override
        public int compareTo(Exact other) {
            return top.multiply(other.bottom).compareTo(other.top.multiply(bottom));
        }
    }

    private final List<Resistor> pieces = new ArrayList<>();
    private final Map<Integer, List<Network>> bySubset = new TreeMap<>();

    BruteForce(Stock stock) {
        for (Stock.Item item : stock.items()) {
            for (int piece = 0; piece < item.count(); piece++) {
                pieces.add(item.resistor());
            }
        }
        for (int subset = 1; subset < 1 << pieces.size(); subset++) {
            bySubset.put(subset, networks(subset));
        }
    }

    /** Returns every network of exactly the pieces of a subset, given by bits. */
    List<Network> ofSubset(int subset) {
        return bySubset.get(subset);
    }

    /** Returns every network of at most so many pieces. */
    List<Network> upTo(int parts) {
        List<Network> all = new ArrayList<>();
        bySubset.forEach((subset, networks) -> {
            if (Integer.bitCount(subset) <= parts) {
                all.addAll(networks);
            }
        });
        return all;
    }

    private List<Network> networks(int subset) {
        if (Integer.bitCount(subset) == 1) {
            return List.of(Network.of(pieces.get(Integer.numberOfTrailingZeros(subset))));
        }
        List<Network> found = new ArrayList<>();
        int lowest = Integer.lowestOneBit(subset);
        for (int part = (subset - 1) & subset; part > 0; part = (part - 1) & subset) {
            if ((part & lowest) == 0) {
                continue;
            }
            for (Network one : bySubset.get(part)) {
                for (Network other : bySubset.get(subset & ~part)) {
                    if (!(one instanceof Network.Series)) {
                        found.add(Network.series(List.of(one, other)));
                    }
                    if (!(one instanceof Network.Parallel)) {
                        found.add(Network.parallel(List.of(one, other)));
                    }
                }
            }
        }
        return found;
    }
}
