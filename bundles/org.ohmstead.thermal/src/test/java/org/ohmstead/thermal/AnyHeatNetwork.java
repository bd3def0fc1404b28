// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/**
 * A network of bodies drawn by chance: each but the first hangs on one before it, some have a way to the air and some a junction between,
 * and all are heated and watched.
 *
 * @param bodies at least one
 */
record AnyHeatNetwork(List<Body> bodies) {
    /** A body: what it holds, what it hangs on by which resistance, and whether it has a way to the air besides. */
    record Body(double joulesPerKelvin, int on, double kelvinPerWatt, boolean junction, boolean airy) {}

    /** A stretch of time with a power for each body, repeated from the front where there are more bodies. */
    record Stretch(double seconds, List<Integer> watts) {
        double[] watts(int count) {
            double[] all = new double[count];
            for (int i = 0; i < count; i++) {
                all[i] = watts.get(i % watts.size());
            }
            return all;
        }
    }

    static Arbitrary<AnyHeatNetwork> any() {
        Arbitrary<Double> capacity = Arbitraries.integers().between(1, 400).map(digits -> digits / 2.0);
        Arbitrary<Double> resistance = Arbitraries.integers().between(1, 80).map(digits -> digits / 20.0);
        return Combinators.combine(
                        capacity,
                        Arbitraries.integers().between(0, 4),
                        resistance,
                        Arbitraries.of(false, true),
                        Arbitraries.of(false, true))
                .as(Body::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(5)
                .map(AnyHeatNetwork::new);
    }

    static Arbitrary<List<Stretch>> stretches() {
        Arbitrary<Double> seconds = Arbitraries.integers().between(0, 6000).map(digits -> digits / 10.0);
        Arbitrary<List<Integer>> watts =
                Arbitraries.integers().between(0, 200).list().ofMinSize(1).ofMaxSize(5);
        return Combinators.combine(seconds, watts)
                .as(Stretch::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(8);
    }

    HeatNetwork network() {
        HeatNetwork.Builder builder = new HeatNetwork.Builder();
        for (int i = 0; i < bodies.size(); i++) {
            Body body = bodies.get(i);
            String id = "b" + i;
            builder.body(id, body.joulesPerKelvin());
            if (i == 0) {
                builder.toAir(id, body.kelvinPerWatt());
            } else {
                String on = "b" + body.on() % i;
                if (body.junction()) {
                    builder.junction("j" + i);
                    builder.link(id, "j" + i, body.kelvinPerWatt() / 3);
                    builder.link("j" + i, on, body.kelvinPerWatt() * 2 / 3);
                } else {
                    builder.link(id, on, body.kelvinPerWatt());
                }
                if (body.airy()) {
                    builder.toAir(id, 4 * body.kelvinPerWatt());
                }
            }
            builder.source(id, id).point(new HeatPoint(id, "body " + i, OptionalDouble.empty()), id);
        }
        return builder.build();
    }
}
