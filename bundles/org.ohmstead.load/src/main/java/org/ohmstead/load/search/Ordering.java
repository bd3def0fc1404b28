// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.Comparator;
import java.util.List;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;

/** Puts the members of connections into one fixed order, so that networks that differ in nothing else become equal. */
final class Ordering {
    private static final Comparator<Network> LARGEST_LAST = Comparator.comparingInt(Ordering::pieces)
            .thenComparing(Comparator.comparingDouble(Ordering::greatestOhms).reversed())
            .thenComparing(Ordering::text);

    private Ordering() {}

    static Network ordered(Network network) {
        if (network instanceof Network.Series series) {
            return Network.series(sorted(series.members()));
        }
        if (network instanceof Network.Parallel parallel) {
            return Network.parallel(sorted(parallel.members()));
        }
        return network;
    }

    /** Returns a network in the trade's notation. */
    static String text(Network network) {
        return NetworkNotation.format(network);
    }

    private static List<Network> sorted(List<Network> members) {
        return members.stream().map(Ordering::ordered).sorted(LARGEST_LAST).toList();
    }

    private static int pieces(Network network) {
        return network.resistors().size();
    }

    private static double greatestOhms(Network network) {
        return network.resistors().stream()
                .mapToDouble(resistor -> resistor.ohms())
                .max()
                .orElseThrow();
    }
}
