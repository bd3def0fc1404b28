// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;

/** Networks drawn by chance, for tests of what holds for all. */
final class RandomNetworks {
    private RandomNetworks() {}

    /** Returns a network of so many resistors, each with an id, a value, a tolerance and an inductance of its own. */
    static Network next(Random random, int pieces) {
        return next(random, pieces, random.nextBoolean(), new AtomicInteger());
    }

    private static Network next(Random random, int pieces, boolean series, AtomicInteger number) {
        if (pieces == 1) {
            Resistor plain = Resistor.of(
                    "R-" + number.incrementAndGet(), Math.exp(random.nextDouble() * 5 - 1), random.nextInt(4) * 0.05);
            return Network.of(new Resistor(
                    plain.id(),
                    plain.ohms(),
                    plain.toleranceRatio(),
                    plain.rating(),
                    plain.traits().withInductanceHenries(OptionalDouble.of(random.nextDouble() * 20e-6))));
        }
        List<Network> members = new ArrayList<>();
        int left = pieces;
        while (left > 0) {
            int size = members.isEmpty() ? 1 + random.nextInt(pieces - 1) : 1 + random.nextInt(left);
            members.add(next(random, size, !series, number));
            left -= size;
        }
        return series ? Network.series(members) : Network.parallel(members);
    }

    /** Returns the network with the value of one resistor multiplied. */
    static Network scaled(Network network, int index, double factor) {
        AtomicInteger position = new AtomicInteger();
        return mapped(
                network,
                resistor -> position.getAndIncrement() == index
                        ? new Resistor(
                                resistor.id(),
                                resistor.ohms() * factor,
                                resistor.toleranceRatio(),
                                resistor.rating(),
                                resistor.traits())
                        : resistor);
    }

    /** Returns the network with every resistor replaced, from left to right. */
    static Network mapped(Network network, UnaryOperator<Resistor> change) {
        if (network instanceof Network.Single single) {
            return Network.of(change.apply(single.resistor()));
        }
        List<Network> members = new ArrayList<>();
        for (Network member : NetworkAnalysis.members(network)) {
            members.add(mapped(member, change));
        }
        return network instanceof Network.Series ? Network.series(members) : Network.parallel(members);
    }
}
