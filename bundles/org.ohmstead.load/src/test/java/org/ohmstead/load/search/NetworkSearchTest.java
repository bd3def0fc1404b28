// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.PowerRating;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;
import org.ohmstead.load.search.BruteForce.Exact;
import org.ohmstead.model.PartTraits;

class NetworkSearchTest {
    private static final double[] E12 = {1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10, 0.47, 22};
    private static final double[] TOLERANCES = {0.01, 0.05, 0.1};
    private static final double[] WATTS = {10, 25, 50, 100};
    private static final double TOLERANCE = 1e-9;

    // The inventory 1, 2.2, 4.7, 8.2, 10 ohm: exact fractions worked out by hand.
    @ParameterizedTest
    @CsvSource({"4, 35219, 8805", "2, 2155, 1078", "8, 9579, 1195"})
    void findsTheKnownBestFractions(double target, long top, long bottom) {
        SearchResult result = search(SearchRequest.of(inventory(), target, 5));
        Exact best = Exact.of(result.candidates().get(0).network());
        assertEquals(Exact.of(BigInteger.valueOf(top), BigInteger.valueOf(bottom)), best);
        assertEquals(5, result.exactUpToParts());
        assertEquals(SearchResult.Ending.COMPLETE, result.ending());
    }

    @Test
    void ranksTheKnownNextResistances() {
        List<Candidate> candidates =
                search(SearchRequest.of(inventory(), 4, 5).withRanking(3, 1)).candidates();
        assertEquals(3.999886, candidates.get(0).ohms(), 1e-6);
        assertEquals(3.987597, candidates.get(1).ohms(), 1e-6);
        assertEquals(4.023602, candidates.get(2).ohms(), 1e-6);
        assertEquals(List.of(5, 3, 4), candidates.stream().map(Candidate::parts).toList());
        assertEquals(-1.0 / 35220, candidates.get(0).errorRatio(), 1e-9);
    }

    // OEIS A006351: series-parallel networks of n different resistors.
    @Test
    void listsAsManyNetworksOfDifferentResistorsAsThereAre() {
        double[] generic = {1.0093, 1.7321, 2.6457, 3.3166, 4.1231, 5.3852};
        int[] expected = {1, 2, 8, 52, 472, 5504};
        Catalogue catalogue = catalogue(generic, 1, 6);
        for (int parts = 1; parts <= 6; parts++) {
            assertTrue(catalogue.listNext(() -> false));
            byte[] counts = new byte[6];
            Arrays.fill(counts, 0, parts, (byte) 1);
            assertEquals(expected[parts - 1], catalogue.group(new Bag(counts)).networks());
        }
    }

    // OEIS A048211: distinct resistances of exactly n equal resistors.
    @Test
    void listsAsManyResistancesOfEqualResistorsAsThereAre() {
        int[] expected = {1, 2, 4, 9, 22, 53, 131, 337, 869, 2213, 5691};
        Catalogue catalogue = catalogue(new double[] {1}, expected.length, expected.length);
        for (int parts = 1; parts <= expected.length; parts++) {
            assertTrue(catalogue.listNext(() -> false));
            Group group = catalogue.group(new Bag(new byte[] {(byte) parts}));
            Set<Exact> values = new HashSet<>();
            for (int entry = group.from(); entry < group.to(); entry++) {
                Fraction exact = catalogue.evaluation().exact(entry);
                values.add(Exact.of(exact.numerator(), exact.denominator()));
            }
            assertEquals(expected[parts - 1], values.size());
        }
    }

    // A153588: with n or fewer; by the ranking of the search, and so by every path through it.
    @ParameterizedTest
    @ValueSource(ints = {3, 4, 100})
    void ranksAsManyResistancesOfUpToSevenEqualResistorsAsThereAre(int mostListed) {
        SearchRequest request =
                SearchRequest.of(stock(new double[] {8.2}, 7), 8.2, 7).withRanking(1000, 1);
        SearchResult result = NetworkSearch.run(request, mostListed);
        assertEquals(179, result.candidates().size());
        assertEquals(0, result.candidates().get(0).errorRatio(), 0);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24})
    void equalsBruteForceWithExactFractions(int seed) {
        Random random = new Random(seed);
        Stock stock = randomStock(random, 6);
        double target = Math.round((0.3 + 12 * random.nextDouble()) * 100) / 100.0;
        BruteForce brute = new BruteForce(stock);
        int parts = Math.min(stock.pieces(), 4 + random.nextInt(3));
        SearchRequest request = SearchRequest.of(stock, target, parts)
                .withRanking(300, 2)
                .withErrorLimitRatio(random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(0.05))
                .withAmbientCelsius(40);
        for (int mostListed : new int[] {3, 6}) {
            SearchResult result = NetworkSearch.run(request, mostListed);
            assertEquals(parts, result.exactUpToParts());
            assertRanking(request, brute.upTo(parts), result);
            assertPareto(request, brute.upTo(parts), result);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {31, 32, 33, 34, 35, 36})
    void keepsToThePowerAndTheBand(int seed) {
        Random random = new Random(seed);
        Stock stock = randomStock(random, 6);
        SearchRequest request = SearchRequest.of(stock, 3 + 3 * random.nextDouble(), 6)
                .withRanking(200, 1)
                .withPowerWatts(OptionalDouble.of(20))
                .withBandHz(OptionalDouble.of(3_000));
        List<Network> meeting = new BruteForce(stock)
                .upTo(6).stream()
                        .filter(network -> power(network, 25) >= 20 && bandPowerRatio(network, 3_000) >= 0.99)
                        .toList();
        SearchResult result = NetworkSearch.run(request, 3);
        assertRanking(request, meeting, result);
        assertPareto(request, meeting, result);
        assertFalse(result.candidates().isEmpty());
    }

    @Test
    void tellsValuesApartThatDoublesCannot() {
        // 1/3 + 1/3 + 1/3 ohm of three 1-ohm resistors in parallel each is exactly 1 ohm, but not in doubles; so it is
        // no second value.
        Stock stock = stock(new double[] {1}, 9);
        SearchResult result = search(SearchRequest.of(stock, 1, 9).withRanking(2, 50));
        Set<Exact> values = new TreeSet<>();
        result.candidates().forEach(candidate -> values.add(Exact.of(candidate.network())));
        assertEquals(2, values.size());
        assertEquals(1, result.candidates().get(0).parts());
        // Two resistances one part in 10^17 apart: the doubles of their sums are the same.
        Stock close = new Stock(List.of(
                new Stock.Item(Resistor.of("A", 10, 0), 1),
                new Stock.Item(Resistor.of("B", 1e-16, 0), 1),
                new Stock.Item(Resistor.of("C", 2e-16, 0), 1)));
        List<Candidate> ranked = search(SearchRequest.of(close, 10, 2)).candidates();
        assertEquals("A", Ordering.text(ranked.get(0).network()));
        assertEquals("A+B", Ordering.text(ranked.get(1).network()));
        assertEquals("A+C", Ordering.text(ranked.get(2).network()));
    }

    @Test
    void showsEquivalentNetworksOnce() {
        SearchResult result =
                search(SearchRequest.of(stock(new double[] {8}, 4), 8, 4).withRanking(5, 50));
        List<String> texts = result.candidates().stream()
                .map(candidate -> Ordering.text(candidate.network()))
                .toList();
        assertEquals(new HashSet<>(texts).size(), texts.size());
        assertTrue(texts.contains("8.0"));
        assertTrue(texts.contains("8.0||8.0+8.0||8.0"));
    }

    @Test
    void findsTheBestOfTwelveDifferentResistorsUsingUpToSeven() {
        double[] ohms = {1, 1.5, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10, 12};
        SearchRequest request = SearchRequest.of(stock(ohms, 1), 4.1234567, 7).withTimeLimit(Duration.ofMinutes(5));
        SearchResult result = search(request);
        assertEquals(7, result.exactUpToParts());
        // By the enumerator in Python with NumPy kept beside this test, over all 90 million values.
        assertEquals(4.123456579284, result.candidates().get(0).ohms(), 1e-12);
    }

    @Test
    void goesThroughEveryBagOnce() {
        Set<List<Byte>> seen = new HashSet<>();
        for (Bags bags = new Bags(new int[] {2, 1, 3, 1}, 4); bags.hasNext(); ) {
            byte[] counts = bags.next().counts();
            List<Byte> bag = new ArrayList<>();
            for (byte count : counts) {
                bag.add(count);
            }
            assertTrue(seen.add(bag));
        }
        int expected = 0;
        for (int code = 0; code < 3 * 2 * 4 * 2; code++) {
            expected += code % 3 + code / 3 % 2 + code / 6 % 4 + code / 24 == 4 ? 1 : 0;
        }
        assertEquals(expected, seen.size());
        assertEquals(expected, Bags.numbers(new int[] {2, 1, 3, 1}, 4, 1000)[4]);
    }

    private static void assertRanking(SearchRequest request, List<Network> all, SearchResult result) {
        Exact target = Exact.of(request.targetOhms());
        TreeMap<Exact, Integer> byDistance = new TreeMap<>();
        Set<Exact> values = new HashSet<>();
        for (Network network : all) {
            Exact value = Exact.of(network);
            if (values.add(value)) {
                byDistance.merge(value.distanceTo(target), 1, Integer::sum);
            }
        }
        List<Exact> expected = new ArrayList<>();
        byDistance.forEach((distance, count) -> {
            boolean within = request.errorLimitRatio().isEmpty()
                    || distance.compareTo(target.times(
                                    Exact.of(request.errorLimitRatio().getAsDouble())))
                            <= 0;
            for (int repeat = 0; repeat < count && within && expected.size() < request.valuesWanted(); repeat++) {
                expected.add(distance);
            }
        });
        List<Exact> found = new ArrayList<>();
        Set<Exact> seen = new HashSet<>();
        for (Candidate candidate : result.candidates()) {
            Exact value = Exact.of(candidate.network());
            assertAnalysis(request, candidate);
            if (seen.add(value)) {
                found.add(value.distanceTo(target));
            }
        }
        assertEquals(expected, found);
    }

    private static void assertAnalysis(SearchRequest request, Candidate candidate) {
        NetworkAnalysis analysis = NetworkAnalysis.of(candidate.network(), request.ambientCelsius());
        assertEquals(analysis.ohms(), candidate.ohms(), TOLERANCE * analysis.ohms());
        assertEquals(analysis.worstCaseLowOhms(), candidate.worstCaseLowOhms(), TOLERANCE * analysis.ohms());
        assertEquals(analysis.worstCaseHighOhms(), candidate.worstCaseHighOhms(), TOLERANCE * analysis.ohms());
        assertEquals(
                analysis.powerLimitWatts().isPresent(),
                candidate.powerLimitWatts().isPresent());
        double watts = analysis.powerLimitWatts().orElse(0);
        assertEquals(watts, candidate.powerLimitWatts().orElse(0), TOLERANCE * (1 + watts));
        assertEquals(analysis.size(), candidate.parts());
    }

    private static void assertPareto(SearchRequest request, List<Network> all, SearchResult result) {
        double limit = request.errorLimitRatio().orElse(0.01);
        List<double[]> points = new ArrayList<>();
        for (Network network : all) {
            double error = Math.abs(network.ohms() / request.targetOhms() - 1);
            if (error <= limit) {
                double worst = Math.max(
                        NetworkAnalysis.worstCaseHighOhms(network) / network.ohms() - 1,
                        1 - NetworkAnalysis.worstCaseLowOhms(network) / network.ohms());
                points.add(new double[] {
                    error,
                    worst,
                    -power(network, request.ambientCelsius()),
                    network.resistors().size()
                });
            }
        }
        List<double[]> front = new ArrayList<>();
        for (double[] point : points) {
            boolean beaten = points.stream().anyMatch(other -> covers(other, point) && !covers(point, other));
            if (!beaten && front.stream().noneMatch(other -> covers(other, point))) {
                front.add(point);
            }
        }
        List<double[]> found = new ArrayList<>();
        for (Candidate candidate : result.pareto()) {
            found.add(new double[] {
                Math.abs(candidate.errorRatio()),
                candidate.worstCaseRatio(),
                -candidate.powerLimitWatts().orElse(0),
                candidate.parts()
            });
        }
        Comparator<double[]> order = Comparator.comparingDouble((double[] point) -> Math.round(point[0] * 1e8))
                .thenComparing(point -> point[3])
                .thenComparing(point -> Math.round(point[1] * 1e8))
                .thenComparing(point -> Math.round(point[2] * 1e6));
        front.sort(order);
        found.sort(order);
        assertEquals(front.size(), found.size());
        for (int index = 0; index < front.size(); index++) {
            assertTrue(covers(front.get(index), found.get(index)) && covers(found.get(index), front.get(index)));
        }
    }

    private static boolean covers(double[] one, double[] other) {
        boolean covers = true;
        for (int measure = 0; measure < one.length; measure++) {
            covers &= one[measure] <= other[measure] + TOLERANCE * Math.max(0.1, Math.abs(other[measure]));
        }
        return covers;
    }

    private static double power(Network network, double ambientCelsius) {
        return NetworkAnalysis.of(network, ambientCelsius).powerLimitWatts().orElse(0);
    }

    /** V squared over R against the real part of the admittance, by complex arithmetic. */
    private static double bandPowerRatio(Network network, double frequencyHz) {
        double[] impedance = impedance(network, 2 * Math.PI * frequencyHz);
        return network.ohms() * impedance[0] / (impedance[0] * impedance[0] + impedance[1] * impedance[1]);
    }

    private static double[] impedance(Network network, double radiansPerSecond) {
        if (network instanceof Network.Single single) {
            Resistor resistor = single.resistor();
            return new double[] {
                resistor.ohms(),
                radiansPerSecond * resistor.traits().inductanceHenries().orElse(0)
            };
        }
        boolean series = network instanceof Network.Series;
        List<Network> members = series ? ((Network.Series) network).members() : ((Network.Parallel) network).members();
        double[] sum = new double[2];
        for (Network member : members) {
            double[] value = impedance(member, radiansPerSecond);
            double[] term = series ? value : inverse(value);
            sum[0] += term[0];
            sum[1] += term[1];
        }
        return series ? sum : inverse(sum);
    }

    private static double[] inverse(double[] value) {
        double square = value[0] * value[0] + value[1] * value[1];
        return new double[] {value[0] / square, -value[1] / square};
    }

    private static Stock randomStock(Random random, int mostPieces) {
        List<Stock.Item> items = new ArrayList<>();
        int pieces = 0;
        while (pieces < mostPieces) {
            int count = Math.min(mostPieces - pieces, 1 + random.nextInt(2));
            PowerRating rating = new PowerRating(WATTS[random.nextInt(WATTS.length)], 25, 250);
            PartTraits traits = PartTraits.NONE.withInductanceHenries(OptionalDouble.of(random.nextInt(4) * 5e-6));
            items.add(new Stock.Item(
                    new Resistor(
                            "R" + items.size(),
                            E12[random.nextInt(E12.length)],
                            TOLERANCES[random.nextInt(TOLERANCES.length)],
                            Optional.of(rating),
                            traits),
                    count));
            pieces += count;
        }
        return new Stock(items);
    }

    private static Stock inventory() {
        return stock(new double[] {1, 2.2, 4.7, 8.2, 10}, 1);
    }

    private static Stock stock(double[] ohms, int count) {
        return new Stock(Arrays.stream(ohms)
                .mapToObj(value -> new Stock.Item(Resistor.of(Double.toString(value), value, 0.01), count))
                .toList());
    }

    private static Catalogue catalogue(double[] ohms, int count, int parts) {
        return new Catalogue(new Kinds(SearchRequest.of(stock(ohms, count), 1, parts)), parts);
    }

    private static SearchResult search(SearchRequest request) {
        return NetworkSearch.run(request, () -> false, done -> {});
    }
}
