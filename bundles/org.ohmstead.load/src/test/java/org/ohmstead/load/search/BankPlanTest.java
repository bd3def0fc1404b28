// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
import org.ohmstead.model.PartTraits;

class BankPlanTest {
    private static final double TOLERANCE = 1e-9;

    // Eight 8-ohm pieces: 8 = 1, 4 = 2 in parallel, 2 = 4, 1 = 8; from one to the next both ends of each further piece
    // are joined on.
    @Test
    void strapsAParallelBankOfEqualPieces() {
        Stock stock = new Stock(List.of(item("8R", 8, 250, 8)));
        BankPlan plan = plan(stock, 1, 0.01, 100, 8, 4, 2, 1);
        assertEquals(8, plan.pieces().size());
        assertTrue(plan.fewestPiecesProven());
        assertEquals(14, plan.movedEnds());
        assertEquals(14, plan.leastMovedEnds());
        assertEquals(
                List.of(1, 2, 4, 8),
                sorted(plan.straps().stream()
                        .map(strap -> strap.branches().get(0).pieces().size())
                        .toList()));
        assertConsistent(plan, stock, List.of(load(8, 1, 100), load(4, 1, 100), load(2, 1, 100), load(1, 1, 100)));
    }

    @Test
    void plansTheStockOfABenchForOneBranch() {
        List<BankPlanRequest.Load> loads = new ArrayList<>();
        for (double ohms : new double[] {8, 4, 2, 1.6, 1.33, 1, 0.5}) {
            loads.add(load(ohms, 1, 150));
        }
        BankPlan plan = BankPlan.find(
                new BankPlanRequest(bench(), loads, 6, 22.5, Duration.ofMinutes(2)), () -> false, done -> {});
        assertEquals(7, plan.straps().size());
        assertTrue(plan.missing().isEmpty());
        assertTrue(plan.fewestPiecesProven(), plan.message());
        assertConsistent(plan, bench(), loads);
    }

    @Test
    void plansTheStockOfABenchForTwoChannelsAndBridged() {
        List<BankPlanRequest.Load> loads =
                List.of(load(8, 2, 200), load(4, 2, 200), load(2, 2, 300), load(4, 1, 400), load(2, 1, 600));
        BankPlan plan = BankPlan.find(
                new BankPlanRequest(bench(), loads, 5, 22.5, Duration.ofMinutes(2)), () -> false, done -> {});
        assertEquals(5, plan.straps().size());
        assertTrue(plan.fewestPiecesProven(), plan.message());
        assertConsistent(plan, bench(), loads);
    }

    // Every set of pieces, order, network, placing and turning round of the pieces, gone through without any of the
    // planner's ways.
    @ParameterizedTest
    @CsvSource({
        "'8,2;4,1', '8,4,16', 1",
        "'8,3', '8,4,12', 1",
        "'6,2;3,1', '6,3,9', 1",
        "'10,2;5,1', '10,5,15', 1",
        "'8,4', '8,4', 2",
        "'4,2;2,2', '4,2', 2"
    })
    void equalsBruteForce(String stockText, String loadText, int branches) {
        Stock stock = stock(stockText);
        double[] ohms = Arrays.stream(loadText.split(","))
                .mapToDouble(Double::parseDouble)
                .toArray();
        List<BankPlanRequest.Load> loads = Arrays.stream(ohms)
                .mapToObj(value -> new BankPlanRequest.Load(value, branches, 0.001, OptionalDouble.empty()))
                .toList();
        BankPlan plan =
                BankPlan.find(new BankPlanRequest(stock, loads, 3, 25, Duration.ofMinutes(2)), () -> false, done -> {});
        int[] expected = new BankBruteForce(stock, loads, 3).fewestPiecesAndMoves();
        assertEquals(expected[0], plan.pieces().size(), plan.message());
        assertEquals(expected[1], plan.movedEnds(), plan.message());
        assertEquals(plan.movedEnds(), plan.leastMovedEnds(), plan.message());
        assertTrue(plan.fewestPiecesProven());
    }

    @Test
    void theClimbFindsWhatTheExactWayFinds() {
        Stock stock = stock("8,3");
        Kinds kinds = new Kinds(SearchRequest.of(stock, 1, 3));
        PieceSet set = new PieceSet(new int[] {3}, 1);
        Network one = Network.of(kinds.resistor(0));
        StrapShape single = StrapShape.of(List.of(one), kinds);
        StrapShape pair = StrapShape.of(List.of(Network.parallel(List.of(one, one))), kinds);
        StrapShape chain =
                StrapShape.of(List.of(Network.series(List.of(Network.parallel(List.of(one, one)), one))), kinds);
        for (StrapShape from : List.of(single, pair, chain)) {
            PieceSet.Placed before = set.placeFirst(from, List.of(3, 0, 4));
            for (StrapShape to : List.of(single, pair, chain)) {
                int least = set.all(to, 1000).stream()
                        .mapToInt(placed -> new Rewiring(before.wiring(), placed.wiring()).movedEnds())
                        .min()
                        .orElseThrow();
                PieceSet.Placed climbed = new PlacementClimb(set, before, () -> false).nearest(to);
                assertEquals(least, new Rewiring(before.wiring(), climbed.wiring()).movedEnds());
            }
        }
    }

    @Test
    void saysWhatToChange() {
        BankPlan plan = plan(new Stock(List.of(item("8R", 8, 250, 2))), 1, 0.01, 10, 8, 4);
        assertEquals(2, plan.movedEnds());
        List<String> changes = plan.straps().get(1).changes();
        if (plan.straps().get(0).loadIndex() == 0) {
            assertEquals(2, changes.size());
            assertTrue(changes.get(0).startsWith("Join end 1 of 8R #2 to "), changes.toString());
        } else {
            assertEquals(1, changes.size());
            assertTrue(changes.get(0).matches("Take 8R #[12] out\\."), changes.toString());
        }
    }

    @Test
    void saysWhichLoadCannotBeMade() {
        BankPlan plan = plan(new Stock(List.of(item("8R", 8, 250, 2))), 1, 0.01, 10, 8, 5);
        assertEquals(1, plan.straps().size());
        assertEquals(1, plan.missing().size());
        assertTrue(
                plan.missing().get(0).startsWith("The load of 5 ohm cannot be made: "),
                plan.missing().toString());
        assertTrue(
                plan.missing().get(0).contains("The nearest is 8R||8R with 4 ohm (-20 %)."),
                plan.missing().toString());
        BankPlan pair = plan(new Stock(List.of(item("8R", 8, 250, 2))), 2, 0.01, 10, 8, 4);
        assertTrue(
                pair.missing().get(0).contains("not hold enough for 2 branches"),
                pair.missing().toString());
        BankPlan strong = plan(new Stock(List.of(item("8R", 8, 250, 2))), 1, 0.01, 600, 4);
        assertTrue(strong.straps().isEmpty());
        assertTrue(
                strong.missing().get(0).contains("The strongest is 8R||8R with 500 W"),
                strong.missing().toString());
        BankPlan none = plan(Stock.EMPTY, 1, 0.01, 10, 4);
        assertTrue(
                none.missing().get(0).contains("The stock holds no resistors"),
                none.missing().toString());
    }

    @Test
    void endsEarlyWhenCancelled() {
        BankPlan plan = BankPlan.find(
                BankPlanRequest.of(bench(), List.of(load(4, 1, 100), load(2, 1, 100))), () -> true, done -> {});
        assertTrue(plan.straps().isEmpty());
        assertFalse(plan.fewestPiecesProven());
        assertTrue(
                plan.missing().get(0).contains("the search ended before"),
                plan.missing().toString());
    }

    @ParameterizedTest
    @ValueSource(ints = {2000, 4000, 8000})
    void givesAPlanThatHoldsWhenCancelledOnTheWay(int questions) {
        List<BankPlanRequest.Load> loads =
                List.of(load(8, 2, 200), load(4, 2, 200), load(1.33, 2, 300), load(2, 1, 600));
        int[] asked = {0};
        BankPlan plan = BankPlan.find(
                new BankPlanRequest(bench(), loads, 6, 22.5, Duration.ofMinutes(2)),
                () -> ++asked[0] > questions,
                done -> {});
        assertTrue(asked[0] > questions, "ended by itself after " + asked[0]);
        assertTrue(plan.message().endsWith("It was cancelled."), plan.message());
        assertConsistent(plan, bench(), loads);
    }

    @Test
    void rejectsBadArguments() {
        assertThrows(IllegalArgumentException.class, () -> load(0, 1, 10));
        assertThrows(IllegalArgumentException.class, () -> load(4, 0, 10));
        assertThrows(IllegalArgumentException.class, () -> load(4, 1, -10));
        assertThrows(IllegalArgumentException.class, () -> new BankPlanRequest.Load(4, 1, 1.5, OptionalDouble.empty()));
        assertThrows(IllegalArgumentException.class, () -> BankPlanRequest.of(bench(), List.of()));
        assertThrows(IllegalArgumentException.class, () -> BankPlan.find(null, () -> false, done -> {}));
    }

    private static void assertConsistent(BankPlan plan, Stock stock, List<BankPlanRequest.Load> loads) {
        Set<Integer> served = new TreeSet<>();
        int moved = 0;
        Set<Piece> used = new HashSet<>();
        for (BankPlan.Strap strap : plan.straps()) {
            BankPlanRequest.Load load = loads.get(strap.loadIndex());
            assertTrue(served.add(strap.loadIndex()));
            assertEquals(load.branches(), strap.branches().size());
            Set<Piece> atOnce = new HashSet<>();
            for (BankPlan.Branch branch : strap.branches()) {
                NetworkAnalysis analysis = NetworkAnalysis.of(branch.network(), 22.5);
                assertEquals(
                        load.nominalOhms(),
                        analysis.ohms(),
                        load.nominalOhms() * load.toleranceRatio() * (1 + TOLERANCE));
                assertTrue(branch.powerLimitWatts().orElseThrow()
                        >= load.powerWatts().orElseThrow() * (1 - TOLERANCE));
                assertEquals(analysis.size(), branch.pieces().size());
                for (int index = 0; index < analysis.size(); index++) {
                    assertEquals(
                            analysis.resistor(index).id(),
                            branch.pieces().get(index).id());
                    assertTrue(atOnce.add(branch.pieces().get(index)), "a piece is in two places");
                }
                assertTrue(branch.pieces().contains(branch.limitingPiece().orElseThrow()));
            }
            used.addAll(atOnce);
            moved += strap.movedEnds();
            if (served.size() == 1) {
                assertEquals(0, strap.movedEnds());
                assertFalse(strap.changes().isEmpty());
            } else {
                assertTrue(strap.changes().size() <= strap.movedEnds());
                assertEquals(strap.movedEnds() == 0, strap.changes().isEmpty());
            }
        }
        assertEquals(moved, plan.movedEnds());
        assertTrue(plan.leastMovedEnds() <= plan.movedEnds());
        assertEquals(loads.size(), served.size());
        assertEquals(new HashSet<>(plan.pieces()), used);
        Map<String, Integer> counts = new TreeMap<>();
        plan.pieces().forEach(piece -> counts.merge(piece.id(), 1, Integer::sum));
        counts.forEach(
                (id, count) -> assertTrue(count <= stock.find(id).orElseThrow().count()));
    }

    private static List<Integer> sorted(List<Integer> values) {
        return values.stream().sorted().toList();
    }

    private static BankPlan plan(Stock stock, int branches, double tolerance, double watts, double... ohms) {
        List<BankPlanRequest.Load> loads = Arrays.stream(ohms)
                .mapToObj(value -> new BankPlanRequest.Load(value, branches, tolerance, OptionalDouble.of(watts)))
                .toList();
        return BankPlan.find(new BankPlanRequest(stock, loads, 8, 25, Duration.ofMinutes(2)), () -> false, done -> {});
    }

    private static BankPlanRequest.Load load(double ohms, int branches, double watts) {
        return new BankPlanRequest.Load(ohms, branches, 0.01, OptionalDouble.of(watts));
    }

    private static Stock bench() {
        return new Stock(List.of(
                item("8R-250W", 8, 250, 8),
                item("4R-300W", 4, 300, 4),
                item("2R-500W", 2, 500, 4),
                item("1R-500W", 1, 500, 4)));
    }

    private static Stock stock(String text) {
        List<Stock.Item> items = new ArrayList<>();
        for (String part : text.split(";")) {
            String[] fields = part.split(",");
            items.add(item(fields[0] + "R", Double.parseDouble(fields[0]), 100, Integer.parseInt(fields[1])));
        }
        return new Stock(items);
    }

    private static Stock.Item item(String id, double ohms, double watts, int count) {
        PowerRating rating = new PowerRating(watts, 25, 250);
        return new Stock.Item(new Resistor(id, ohms, 0.01, Optional.of(rating), PartTraits.NONE), count);
    }
}
