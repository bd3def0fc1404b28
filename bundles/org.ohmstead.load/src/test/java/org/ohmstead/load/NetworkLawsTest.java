// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.ohmstead.metrology.CoverageInterval;

/** The algebra of series and parallel, and what the theory of networks says of every one of them. */
class NetworkLawsTest {
    private static final double RATIO = 1e-11;

    /** Ids that need quotes, that look like values, like signs, and like other ids. */
    private static final List<Resistor> AWKWARD = List.of(
            Resistor.of("A1", 1, 0.01),
            Resistor.of("a1", 2, 0.02),
            Resistor.of("8R2", 82, 0.05),
            Resistor.of("10RJ@50W", 3, 0.05),
            Resistor.of("two words", 4.7, 0.1),
            Resistor.of("a||b", 5, 0.1),
            Resistor.of("(x)", 6, 0.1),
            Resistor.of("+", 7, 0.1),
            Resistor.of("say \"so\"", 8, 0.1),
            Resistor.of("\"", 9, 0.1),
            Resistor.of("4.7", 10, 0.1),
            Resistor.of("\u03a9\u00e4", 11, 0.1));

    private static final Stock AWKWARD_STOCK =
            new Stock(AWKWARD.stream().map(kind -> new Stock.Item(kind, 10_000)).toList());

    @Property(seed = "20261111", tries = 200)
    void seriesAndParallelAreAssociativeAndCommutative(
            @ForAll("networks") Network a, @ForAll("networks") Network b, @ForAll("networks") Network c) {
        Network series = Network.series(List.of(a, b, c));
        assertEquals(series, Network.series(List.of(a, Network.series(List.of(b, c)))));
        assertEquals(series, Network.series(List.of(Network.series(List.of(a, b)), c)));
        near(series.ohms(), Network.series(List.of(c, a, b)).ohms());
        near(series.ohms(), a.ohms() + b.ohms() + c.ohms());
        Network parallel = Network.parallel(List.of(a, b, c));
        assertEquals(parallel, Network.parallel(List.of(a, Network.parallel(List.of(b, c)))));
        assertEquals(parallel, Network.parallel(List.of(Network.parallel(List.of(a, b)), c)));
        near(parallel.ohms(), Network.parallel(List.of(b, c, a)).ohms());
        near(1 / parallel.ohms(), 1 / a.ohms() + 1 / b.ohms() + 1 / c.ohms());
        assertTrue(parallel.ohms() <= Math.min(a.ohms(), Math.min(b.ohms(), c.ohms())));
    }

    @Property(seed = "20261112", tries = 400)
    void whatIsWrittenReadsAsTheSameNetwork(@ForAll("awkward") Network network) throws NotationException {
        String text = NetworkNotation.format(network);
        assertEquals(network, NetworkNotation.parse(text, AWKWARD_STOCK), text);
        String spaced = text.contains("\"") ? text : text.replace("+", " + ").replace("||", "\t||  ");
        assertEquals(network, NetworkNotation.parse(spaced, AWKWARD_STOCK), spaced);
        assertEquals(network, NetworkNotation.parse("((" + text + "))", AWKWARD_STOCK), text);
    }

    @Property(seed = "20261113", tries = 300)
    void noBracketCanBeLeftOut(@ForAll("plain") Network network) throws NotationException {
        String text = NetworkNotation.format(network);
        for (int open = text.indexOf('('); open >= 0; open = text.indexOf('(', open + 1)) {
            int depth = 0;
            int close = open;
            do {
                depth += text.charAt(close) == '(' ? 1 : text.charAt(close) == ')' ? -1 : 0;
                close++;
            } while (depth > 0);
            String without = text.substring(0, open) + text.substring(open + 1, close - 1) + text.substring(close);
            assertTrue(!network.equals(NetworkNotation.parse(without, AWKWARD_STOCK)), text);
        }
    }

    /** Rayleigh's law of monotony: raising a resistance never lowers that of the whole (Doyle and Snell, 1984, 1.4). */
    @Property(seed = "20261114", tries = 300)
    void raisingOneResistanceNeverLowersTheWhole(
            @ForAll("networks") Network network,
            @ForAll @IntRange(max = 63) int which,
            @ForAll @DoubleRange(min = 1, max = 1000) double factor) {
        int index = which % NetworkAnalysis.pieces(network);
        double before = network.ohms();
        double after = RandomNetworks.scaled(network, index, factor).ohms();
        double raisedBy = network.resistors().get(index).ohms() * (factor - 1);
        assertTrue(after >= before * (1 - RATIO), () -> before + " fell to " + after);
        assertTrue(after <= (before + raisedBy) * (1 + RATIO), () -> before + " rose to " + after);
    }

    @Property(seed = "20261115", tries = 300)
    void aNetworkAndItsDualHaveReciprocalValues(@ForAll("networks") Network network) {
        Network dual = AnyNetwork.dual(network);
        near(1 / network.ohms(), dual.ohms());
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
        NetworkAnalysis other = NetworkAnalysis.of(dual, 25);
        for (int i = 0; i < analysis.size(); i++) {
            near(analysis.share(i), other.share(i));
        }
    }

    @Property(seed = "20261116", tries = 300)
    void aNetworkLiesBetweenAllItsResistorsInParallelAndInSeries(@ForAll("networks") Network network) {
        double sum = network.resistors().stream().mapToDouble(Resistor::ohms).sum();
        double siemens = network.resistors().stream()
                .mapToDouble(each -> 1 / each.ohms())
                .sum();
        assertTrue(network.ohms() <= sum * (1 + RATIO));
        assertTrue(network.ohms() >= 1 / siemens * (1 - RATIO));
    }

    /** Tellegen's theorem: what goes in is what the parts take. */
    @Property(seed = "20261117", tries = 300)
    void thePowersOfThePartsAddUpToThatOfTheWhole(
            @ForAll("networks") Network network, @ForAll @DoubleRange(min = 0.01, max = 5000) double watts) {
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 40);
        double sum = IntStream.range(0, analysis.size())
                .mapToDouble(i -> analysis.powerWatts(i, watts))
                .sum();
        near(watts, sum);
        near(watts, analysis.voltsRms(watts) * analysis.ampsRms(watts));
        assertTrue(IntStream.range(0, analysis.size())
                .allMatch(i -> analysis.share(i) > 0 && analysis.share(i) <= 1 + RATIO));
        // At the limit exactly one resistor, or several at once, take what they may, and none takes more.
        double limit = analysis.powerLimitWatts().orElseThrow();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < analysis.size(); i++) {
            least = Math.min(least, analysis.headroomRatio(i, limit).orElseThrow());
        }
        near(1, least);
        near(
                1,
                analysis.headroomRatio(analysis.limitingIndex().orElseThrow(), limit)
                        .orElseThrow());
    }

    @Property(seed = "20261118", tries = 300)
    void theWorstCaseHoldsEveryDrawWithinTheTolerances(@ForAll("networks") Network network, @ForAll Random random) {
        double low = NetworkAnalysis.worstCaseLowOhms(network);
        double high = NetworkAnalysis.worstCaseHighOhms(network);
        assertTrue(low <= network.ohms() && network.ohms() <= high * (1 + RATIO));
        for (int draw = 0; draw < 20; draw++) {
            double ohms = drawn(network, random).ohms();
            assertTrue(
                    ohms >= low * (1 - RATIO) && ohms <= high * (1 + RATIO),
                    () -> ohms + " beyond " + low + ", " + high);
        }
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
        assertTrue(analysis.rssToleranceRatio() <= analysis.worstCaseToleranceRatio() * (1 + RATIO) + RATIO);
    }

    @Property(seed = "20261119", tries = 15)
    void theDrawnIntervalsNestInsideTheWorstCase(
            @ForAll("networks") Network network, @ForAll @IntRange(min = 1, max = 1000) int seed) {
        ToleranceStudy study = ToleranceStudy.of(network, 400, seed);
        CoverageInterval half = study.intervalOhms(0.5);
        CoverageInterval most = study.intervalOhms(0.95);
        double low = NetworkAnalysis.worstCaseLowOhms(network) * (1 - RATIO);
        double high = NetworkAnalysis.worstCaseHighOhms(network) * (1 + RATIO);
        assertTrue(low <= most.lower() && most.lower() <= half.lower());
        assertTrue(half.lower() <= half.upper() && half.upper() <= most.upper() && most.upper() <= high);
        near(1, study.probabilityWithin((low + high) / 2, (high - low) / (high + low) * (1 + RATIO) + RATIO));
    }

    @Property(seed = "20261120", tries = 300)
    void theUnitOfResistanceDoesNotMatter(
            @ForAll("networks") Network network, @ForAll @DoubleRange(min = 0.01, max = 1e6) double factor) {
        Network scaled = RandomNetworks.mapped(
                network,
                each -> new Resistor(
                        each.id(), each.ohms() * factor, each.toleranceRatio(), each.rating(), each.traits()));
        near(network.ohms() * factor, scaled.ohms());
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 40);
        NetworkAnalysis other = NetworkAnalysis.of(scaled, 40);
        near(analysis.powerLimitWatts().orElseThrow(), other.powerLimitWatts().orElseThrow());
        for (int i = 0; i < analysis.size(); i++) {
            near(analysis.share(i), other.share(i));
        }
    }

    @Provide
    Arbitrary<Network> networks() {
        return AnyNetwork.ofValues();
    }

    @Provide
    Arbitrary<Network> awkward() {
        return AnyNetwork.of(Arbitraries.of(AWKWARD));
    }

    @Provide
    Arbitrary<Network> plain() {
        return AnyNetwork.of(Arbitraries.of(AWKWARD.subList(0, 2)));
    }

    private static Network drawn(Network network, Random random) {
        List<Network> members = new ArrayList<>();
        if (network instanceof Network.Single single) {
            double tolerance = single.resistor().toleranceRatio();
            double ohms = single.resistor().ohms() * (1 + tolerance * (2 * random.nextDouble() - 1));
            return Network.of(Resistor.of("drawn", ohms, 0));
        }
        for (Network member : NetworkAnalysis.members(network)) {
            members.add(drawn(member, random));
        }
        Collections.shuffle(members, random);
        return network instanceof Network.Series ? Network.series(members) : Network.parallel(members);
    }

    private static void near(double expected, double actual) {
        assertEquals(expected, actual, RATIO * Math.abs(expected));
    }
}
