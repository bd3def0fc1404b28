// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.ohmstead.load.AnyNetwork;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;

/** What every search must answer, whatever the stock and the target. */
class NetworkSearchLawsTest {
    private static final double RATIO = 1e-11;

    @Property(seed = "20261121", tries = 60)
    void noNetworkComposedByChanceIsNearer(
            @ForAll("values") List<Integer> values,
            @ForAll @IntRange(min = 10, max = 3000) int target,
            @ForAll @IntRange(min = 1, max = 5) int parts,
            @ForAll Random random) {
        Stock stock = stock(values, 2);
        double targetOhms = target / 100.0;
        SearchResult result = search(stock, targetOhms, parts);
        assertEquals(SearchResult.Ending.COMPLETE, result.ending());
        double best = Math.abs(result.nearest().orElseThrow().ohms() - targetOhms);
        for (int i = 0; i < 50; i++) {
            Network composed = composed(values, parts, random);
            double distance = Math.abs(composed.ohms() - targetOhms);
            assertTrue(best <= distance + RATIO * targetOhms, () -> NetworkNotation.format(composed) + " is nearer");
        }
    }

    @Property(seed = "20261122", tries = 60)
    void everyCandidateCanBeBuiltAndIsWhatItSays(
            @ForAll("values") List<Integer> values,
            @ForAll @IntRange(min = 10, max = 3000) int target,
            @ForAll @IntRange(min = 1, max = 5) int parts) {
        Stock stock = stock(values, 2);
        double before = 0;
        for (Candidate candidate : search(stock, target / 100.0, parts).candidates()) {
            Network network = candidate.network();
            assertEquals(network.ohms(), candidate.ohms(), RATIO * network.ohms());
            assertEquals(candidate.ohms() / (target / 100.0) - 1, candidate.errorRatio(), 1e-9);
            assertEquals(network.resistors().size(), candidate.parts());
            assertTrue(candidate.parts() <= parts);
            assertTrue(candidate.worstCaseLowOhms() <= candidate.ohms());
            assertTrue(candidate.ohms() <= candidate.worstCaseHighOhms());
            Map<String, Integer> used = new HashMap<>();
            network.resistors().forEach(each -> used.merge(each.id(), 1, Integer::sum));
            used.forEach((id, count) ->
                    assertTrue(count <= stock.find(id).orElseThrow().count(), id));
            assertTrue(Math.abs(candidate.errorRatio()) >= before - RATIO);
            before = Math.abs(candidate.errorRatio());
        }
    }

    @Property(seed = "20261123", tries = 40)
    void aScaledTaskHasTheScaledAnswer(
            @ForAll("values") List<Integer> values,
            @ForAll @IntRange(min = 10, max = 3000) int target,
            @ForAll @IntRange(min = -3, max = 5) int exponent) {
        SearchResult one = search(stock(values, 2), decimal(target, 2), 4);
        SearchResult other = search(stock(values, 2 - exponent), decimal(target, 2 - exponent), 4);
        assertEquals(one.candidates().size(), other.candidates().size());
        for (int i = 0; i < one.candidates().size(); i++) {
            assertEquals(
                    one.candidates().get(i).errorRatio(),
                    other.candidates().get(i).errorRatio(),
                    1e-9);
        }
    }

    @Property(seed = "20261124", tries = 40)
    void moreAtHandOrMorePartsNeverMakeItWorse(
            @ForAll("values") List<Integer> values,
            @ForAll @IntRange(min = 10, max = 3000) int target,
            @ForAll @IntRange(min = 10, max = 3000) int added,
            @ForAll @IntRange(min = 1, max = 4) int parts) {
        List<Integer> more = new ArrayList<>(values);
        more.add(added);
        double few = distance(values, target, parts);
        assertTrue(distance(more, target, parts) <= few + RATIO);
        assertTrue(distance(values, target, parts + 1) <= few + RATIO);
    }

    @Property(seed = "20261125", tries = 200)
    void theOrderOfMembersDoesNotMatterToTheCanonicalForm(@ForAll("networks") Network network, @ForAll Random random) {
        Network ordered = Ordering.ordered(network);
        assertEquals(ordered, Ordering.ordered(shuffled(network, random)));
        assertEquals(ordered, Ordering.ordered(ordered));
        assertEquals(network.ohms(), ordered.ohms(), RATIO * network.ohms());
    }

    @Provide
    Arbitrary<List<Integer>> values() {
        return Arbitraries.integers().between(10, 2200).list().ofMinSize(1).ofMaxSize(6);
    }

    @Provide
    Arbitrary<Network> networks() {
        return AnyNetwork.ofValues();
    }

    private static SearchResult search(Stock stock, double targetOhms, int parts) {
        return NetworkSearch.run(SearchRequest.of(stock, targetOhms, parts), () -> false, done -> {});
    }

    private static double distance(List<Integer> values, int target, int parts) {
        return Math.abs(search(stock(values, 2), target / 100.0, parts)
                .nearest()
                .orElseThrow()
                .errorRatio());
    }

    private static Stock stock(List<Integer> values, int scale) {
        Map<Integer, Integer> counts = new LinkedHashMap<>();
        values.forEach(value -> counts.merge(value, 1, Integer::sum));
        return new Stock(counts.entrySet().stream()
                .map(kind -> new Stock.Item(
                        Resistor.of("R" + kind.getKey(), decimal(kind.getKey(), scale), 0.05), kind.getValue()))
                .toList());
    }

    private static double decimal(int digits, int scale) {
        return new BigDecimal(digits).movePointLeft(scale).doubleValue();
    }

    private static Network composed(List<Integer> values, int parts, Random random) {
        List<Integer> pieces = new ArrayList<>(values);
        Collections.shuffle(pieces, random);
        List<Network> left = new ArrayList<>();
        for (int value : pieces.subList(0, 1 + random.nextInt(Math.min(parts, pieces.size())))) {
            left.add(Network.of(Resistor.of("R" + value, value / 100.0, 0.05)));
        }
        while (left.size() > 1) {
            List<Network> pair =
                    List.of(left.remove(random.nextInt(left.size())), left.remove(random.nextInt(left.size())));
            left.add(random.nextBoolean() ? Network.series(pair) : Network.parallel(pair));
        }
        return left.get(0);
    }

    private static Network shuffled(Network network, Random random) {
        List<Network> members = new ArrayList<>();
        if (network instanceof Network.Series series) {
            series.members().forEach(member -> members.add(shuffled(member, random)));
        } else if (network instanceof Network.Parallel parallel) {
            parallel.members().forEach(member -> members.add(shuffled(member, random)));
        } else {
            return network;
        }
        Collections.shuffle(members, random);
        return network instanceof Network.Series ? Network.series(members) : Network.parallel(members);
    }
}
