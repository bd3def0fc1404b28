// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.load.Network;
import org.ohmstead.load.PowerRating;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;
import org.ohmstead.load.drawing.WiringList;
import org.ohmstead.model.PartTraits;

/** Does at a bank of strings what the sentences of a plan say, and looks whether it is strapped as the plan draws it. */
class FollowedPlanTest {
    private static final Pattern JOIN_FIRST =
            Pattern.compile("Join (.+) (?:to terminal|at joint) ([A-Z]+) of branch (\\d+)\\.");
    private static final Pattern JOIN = Pattern.compile("Join (end [12] of \\S+ #\\d+|terminal [AB] of branch \\d+) to"
            + " (end [12] of \\S+ #\\d+|terminal [AB] of branch \\d+)\\.");
    private static final Pattern TAKE_OUT = Pattern.compile("Take (\\S+ #\\d+) out\\.");
    private static final Pattern TAKE_OFF = Pattern.compile("Take (.+) off\\.");

    /** Ends and terminals by what they are joined to; those joined to nothing are missing. */
    private final List<Set<String>> nodes = new ArrayList<>();

    @ParameterizedTest
    @CsvSource({
        "'8R,8,8', '8,4,2', 1",
        "'8R,8,2;4R,4,1', '8,4,16', 1",
        "'8R,8,3', '8,4,12', 1",
        "'8R,8,4', '8,4', 2",
        "'4R,4,2;2R,2,2', '4,2', 2",
        "'8R-250W,8,8;4R-300W,4,4;2R-500W,2,4;1R-500W,1,4', '8,4,2,1.6,1.33,1,0.5', 1",
        "'8R-250W,8,8;4R-300W,4,4;2R-500W,2,4;1R-500W,1,4', '8,6,3,1.5', 2"
    })
    void theSentencesLeadToWhatIsDrawn(String stockText, String loadText, int branches) {
        List<BankPlanRequest.Load> loads = Arrays.stream(loadText.split(","))
                .map(ohms -> new BankPlanRequest.Load(Double.parseDouble(ohms), branches, 0.01, OptionalDouble.empty()))
                .toList();
        BankPlan plan = BankPlan.find(
                new BankPlanRequest(stock(stockText), loads, 6, 25, Duration.ofMinutes(2)), () -> false, done -> {});
        assertEquals(loads.size(), plan.straps().size(), plan.message());
        for (int step = 0; step < plan.straps().size(); step++) {
            BankPlan.Strap strap = plan.straps().get(step);
            int moved = 0;
            for (String sentence : strap.changes()) {
                moved += step == 0 ? strap(sentence) : change(sentence);
            }
            assertEquals(
                    drawn(strap, branches),
                    Set.copyOf(joined()),
                    strap.changes().toString());
            assertTrue(moved <= strap.movedEnds(), strap.changes().toString());
        }
    }

    @Test
    void eachPieceLiesStraightInTheFirstStrapThatUsesIt() {
        BankPlan plan = BankPlan.find(
                BankPlanRequest.of(
                        stock("8R,8,4"),
                        List.of(
                                new BankPlanRequest.Load(4, 1, 0.01, OptionalDouble.empty()),
                                new BankPlanRequest.Load(16, 1, 0.01, OptionalDouble.empty()),
                                new BankPlanRequest.Load(12, 1, 0.01, OptionalDouble.empty()))),
                () -> false,
                done -> {});
        Set<Piece> seen = new HashSet<>();
        for (BankPlan.Strap strap : plan.straps()) {
            for (BankPlan.Branch branch : strap.branches()) {
                for (int index = 0; index < branch.pieces().size(); index++) {
                    boolean first = seen.add(branch.pieces().get(index));
                    assertTrue(!first || !branch.turned().get(index), branch.toString());
                }
            }
        }
    }

    @Test
    void aPieceThatWouldLieTurnedAtFirstHasItsEndsNamedTheOtherWay() {
        Kinds kinds = new Kinds(SearchRequest.of(stock("8R,8,3"), 1, 3));
        PieceSet set = new PieceSet(new int[] {3}, 1);
        Network one = Network.of(kinds.resistor(0));
        StrapShape pair = StrapShape.of(List.of(Network.parallel(List.of(one, one))), kinds);
        StrapShape chain = StrapShape.of(List.of(Network.series(List.of(one, one, one))), kinds);
        List<PieceSet.Placed> before =
                List.of(set.place(pair, new int[] {3, 0}), set.place(chain, new int[] {1, 2, 5}));
        List<PieceSet.Placed> after = set.straightFirst(before);
        assertArrayEquals(new int[] {2, 0}, after.get(0).pieces());
        assertArrayEquals(new int[] {1, 3, 4}, after.get(1).pieces());
        assertEquals(moved(before), moved(after));
    }

    private static int moved(List<PieceSet.Placed> straps) {
        return new Rewiring(straps.get(0).wiring(), straps.get(1).wiring()).movedEnds();
    }

    @Test
    void saysWhichEndsMeetWhereAtFirst() {
        BankPlan plan = BankPlan.find(
                BankPlanRequest.of(
                        stock("8R,8,3"), List.of(new BankPlanRequest.Load(12, 1, 0.01, OptionalDouble.empty()))),
                () -> false,
                done -> {});
        List<String> changes = plan.straps().get(0).changes();
        assertTrue(changes.get(0).contains("mark its end 1 with tape"), changes.toString());
        assertEquals(4, changes.size(), changes.toString());
        assertTrue(changes.get(3).endsWith(" at joint C of branch 1."), changes.toString());
    }

    @Test
    void rejectsABranchThatSaysItOfOtherPieces() {
        BankPlan.Branch branch = BankPlan.find(
                        BankPlanRequest.of(
                                stock("8R,8,2"), List.of(new BankPlanRequest.Load(4, 1, 0.01, OptionalDouble.empty()))),
                        () -> false,
                        done -> {})
                .straps()
                .get(0)
                .branches()
                .get(0);
        assertEquals(List.of(false, false), branch.turned());
        assertThrows(
                IllegalArgumentException.class,
                () -> new BankPlan.Branch(
                        branch.network(),
                        branch.pieces(),
                        List.of(true),
                        branch.ohms(),
                        branch.errorRatio(),
                        branch.powerLimitWatts(),
                        branch.limitingPiece()));
    }

    /** Straps from nothing; returns how many ends were moved, which does not count. */
    private int strap(String sentence) {
        if (sentence.startsWith("Tag ")) {
            return 0;
        }
        Matcher join = JOIN_FIRST.matcher(sentence);
        assertTrue(join.matches(), sentence);
        Set<String> node = new TreeSet<>(List.of(join.group(1).split(", | and ")));
        if (join.group(2).equals("A") || join.group(2).equals("B")) {
            node.add("terminal " + join.group(2) + " of branch " + join.group(3));
        }
        nodes.add(node);
        return 0;
    }

    /** Does one change and returns how many ends were moved at least. */
    private int change(String sentence) {
        Matcher join = JOIN.matcher(sentence);
        Matcher out = TAKE_OUT.matcher(sentence);
        Matcher off = TAKE_OFF.matcher(sentence);
        if (join.matches()) {
            off(join.group(1));
            Optional<Set<String>> there =
                    nodes.stream().filter(node -> node.contains(join.group(2))).findFirst();
            there.ifPresentOrElse(
                    node -> node.add(join.group(1)),
                    () -> nodes.add(new TreeSet<>(List.of(join.group(1), join.group(2)))));
        } else if (out.matches()) {
            off("end 1 of " + out.group(1));
            off("end 2 of " + out.group(1));
        } else if (off.matches()) {
            off(off.group(1));
        } else {
            fail(sentence);
        }
        return 1;
    }

    private void off(String end) {
        nodes.forEach(node -> node.remove(end));
    }

    private List<Set<String>> joined() {
        return nodes.stream().filter(node -> node.size() > 1).toList();
    }

    /** The nodes of a strap by the joints of its drawing and which way round each piece lies. */
    private static Set<Set<String>> drawn(BankPlan.Strap strap, int branches) {
        assertEquals(branches, strap.branches().size());
        Map<String, Set<String>> drawn = new HashMap<>();
        int number = 1;
        for (BankPlan.Branch branch : strap.branches()) {
            WiringList wiring = WiringList.of(branch.network(), new WiringList.Use(OptionalDouble.empty(), 25, false));
            for (String terminal : List.of("A", "B")) {
                drawn.computeIfAbsent(number + terminal, name -> new TreeSet<>())
                        .add("terminal " + terminal + " of branch " + number);
            }
            for (int index = 0; index < branch.pieces().size(); index++) {
                boolean turned = branch.turned().get(index);
                Piece piece = branch.pieces().get(index);
                drawn.computeIfAbsent(number + wiring.pieces().get(index).left(), name -> new TreeSet<>())
                        .add("end " + (turned ? 2 : 1) + " of " + piece);
                drawn.computeIfAbsent(number + wiring.pieces().get(index).right(), name -> new TreeSet<>())
                        .add("end " + (turned ? 1 : 2) + " of " + piece);
            }
            number++;
        }
        return Set.copyOf(drawn.values());
    }

    private static Stock stock(String text) {
        List<Stock.Item> items = new ArrayList<>();
        for (String part : text.split(";")) {
            String[] fields = part.split(",");
            Resistor resistor = new Resistor(
                    fields[0],
                    Double.parseDouble(fields[1]),
                    0.01,
                    Optional.of(new PowerRating(100, 25, 250)),
                    PartTraits.NONE);
            items.add(new Stock.Item(resistor, Integer.parseInt(fields[2])));
        }
        return new Stock(items);
    }
}
