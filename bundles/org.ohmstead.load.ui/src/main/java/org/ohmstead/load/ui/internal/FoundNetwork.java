// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.search.Candidate;
import org.ohmstead.load.search.SearchResult;

/**
 * A network that can be chosen: one that was found, or typed.
 *
 * @param network which
 * @param notation as it is written
 * @param ohms its value
 * @param errorRatio against the target
 * @param parts number of its resistors
 * @param lowOhms least value by the tolerances
 * @param highOhms greatest value by the tolerances
 * @param standardRatio relative standard uncertainty that the tolerances make
 * @param powerLimitWatts empty when a rating is missing
 * @param limitingPart what limits the power; empty text when it is not known
 * @param unbeaten whether no other one found is better in one respect and as good in the others
 */
record FoundNetwork(
        Network network,
        String notation,
        double ohms,
        double errorRatio,
        int parts,
        double lowOhms,
        double highOhms,
        double standardRatio,
        OptionalDouble powerLimitWatts,
        String limitingPart,
        boolean unbeaten) {

    /** Returns a network against a target. */
    static FoundNetwork of(Network network, Target target, boolean unbeaten) {
        NetworkAnalysis analysis = NetworkAnalysis.of(network, target.ambientCelsius());
        return new FoundNetwork(
                network,
                NetworkNotation.format(network),
                analysis.ohms(),
                analysis.ohms() / target.ohms() - 1,
                analysis.size(),
                analysis.worstCaseLowOhms(),
                analysis.worstCaseHighOhms(),
                analysis.standardToleranceRatio(),
                analysis.powerLimitWatts(),
                analysis.limitingPart().map(resistor -> resistor.id()).orElse(""),
                unbeaten);
    }

    /** Returns all that a search gives, the unbeaten ones marked: first those that it ranks, then what only the comparison holds. */
    static List<FoundNetwork> of(SearchResult result, Target target) {
        Set<Network> unbeaten = new LinkedHashSet<>();
        result.pareto().forEach(candidate -> unbeaten.add(candidate.network()));
        Set<Network> all = new LinkedHashSet<>();
        result.candidates().stream().map(Candidate::network).forEach(all::add);
        all.addAll(unbeaten);
        if (all.isEmpty()) {
            result.nearest().map(Candidate::network).ifPresent(all::add);
        }
        List<FoundNetwork> found = new ArrayList<>();
        all.forEach(network -> found.add(of(network, target, unbeaten.contains(network))));
        return found;
    }
}
