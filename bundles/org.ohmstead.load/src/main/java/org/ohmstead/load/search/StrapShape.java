// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.List;
import java.util.stream.Collectors;
import org.ohmstead.load.Network;

/**
 * How the branches of a load are joined, without saying which piece is which.
 *
 * @param networks a network for each branch
 * @param kinds kinds of their resistors, from left to right
 * @param text all in the trade's notation, to tell shapes apart
 */
record StrapShape(List<Network> networks, int[] kinds, String text) {
    static StrapShape of(List<Network> networks, Kinds stock) {
        int[] kinds = networks.stream()
                .flatMap(network -> network.resistors().stream())
                .mapToInt(stock::kind)
                .toArray();
        return new StrapShape(
                List.copyOf(networks),
                kinds,
                networks.stream().map(Ordering::text).collect(Collectors.joining(" ")));
    }
}
