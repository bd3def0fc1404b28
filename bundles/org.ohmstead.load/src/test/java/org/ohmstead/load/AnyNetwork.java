// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.ohmstead.model.PartTraits;

/** Networks of all shapes, drawn for laws that hold for all; a case that breaks one is cut down to a small network. */
public final class AnyNetwork {
    private AnyNetwork() {}

    /** Returns networks of resistors from 0.01 ohm to 100 kilohm, each rated at some watts, with some tolerance. */
    public static Arbitrary<Network> ofValues() {
        Arbitrary<Double> ohms = Combinators.combine(
                        Arbitraries.integers().between(1, 999),
                        Arbitraries.integers().between(-2, 2))
                .as((digits, exponent) -> Double.parseDouble(digits + "e" + exponent));
        Arbitrary<Double> tolerance = Arbitraries.of(0.0, 0.01, 0.05, 0.1, 0.2);
        Arbitrary<Integer> watts = Arbitraries.of(5, 10, 50, 100, 300);
        return of(Combinators.combine(ohms, tolerance, watts)
                .as((value, ratio, rated) -> new Resistor(
                        value + "/" + ratio + "/" + rated,
                        value,
                        ratio,
                        Optional.of(new PowerRating(rated, 25, 250)),
                        PartTraits.NONE)));
    }

    /** Returns networks of some kinds of resistors, up to 64 pieces, four connections deep at most. */
    public static Arbitrary<Network> of(Arbitrary<Resistor> kinds) {
        return Arbitraries.recursive(
                () -> kinds.map(Network::of),
                inner -> Arbitraries.oneOf(
                        inner,
                        inner.list().ofMinSize(2).ofMaxSize(3).map(Network::series),
                        inner.list().ofMinSize(2).ofMaxSize(3).map(Network::parallel)),
                0,
                4);
    }

    /** Returns a network of the same resistors with series for parallel, parallel for series, and ohms for siemens. */
    static Network dual(Network network) {
        if (network instanceof Network.Single single) {
            Resistor resistor = single.resistor();
            return Network.of(Resistor.of(resistor.id(), 1 / resistor.ohms(), resistor.toleranceRatio()));
        }
        List<Network> members =
                NetworkAnalysis.members(network).stream().map(AnyNetwork::dual).toList();
        return network instanceof Network.Series ? Network.parallel(members) : Network.series(members);
    }
}
