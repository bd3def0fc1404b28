// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.units.text.Messages;

/** Plans a bank: what the loads can be made of, the smallest set of pieces, the order and the strapping. */
final class BankPlanner {
    private static final Messages TEXTS = Messages.of(BankPlanner.class);

    private static final int MOST_CHOICES = 20_000;
    private static final int MOST_SHAPES = 12;
    private static final int MOST_SHAPES_MADE = 2000;
    private static final Comparator<StrapShape> SIMPLEST_FIRST = Comparator.comparingInt(
                    (StrapShape shape) -> shape.kinds().length)
            .thenComparingInt(shape -> new HashSet<>(shape.networks()).size());
    private static final double OPTIONS_SHARE = 0.5;

    private final BankPlanRequest request;
    private final Stop stop;
    private final DoubleConsumer progress;
    private final Kinds kinds;
    private final Catalogue catalogue;
    private final int mostParts;
    private final List<String> missing = new ArrayList<>();
    private final List<Integer> feasible = new ArrayList<>();
    private final List<List<BranchOptions.Option>> options = new ArrayList<>();
    private final List<List<int[]>> choices = new ArrayList<>();
    private boolean choicesComplete = true;

    BankPlanner(BankPlanRequest request, Stop stop, DoubleConsumer progress) {
        this.request = request;
        this.stop = stop;
        this.progress = progress;
        mostParts = Math.max(
                1, Math.min(request.maxPartsPerBranch(), request.stock().pieces()));
        kinds = new Kinds(SearchRequest.of(request.stock(), 1, mostParts).withAmbientCelsius(request.ambientCelsius()));
        catalogue = new Catalogue(kinds, mostParts);
    }

    BankPlan plan() {
        boolean listing = true;
        while (listing && catalogue.listedParts() < (mostParts + 1) / 2) {
            listing = catalogue.listNext(stop);
        }
        for (int load = 0; load < request.loads().size(); load++) {
            choose(load);
            progress.accept(OPTIONS_SHARE * (load + 1) / request.loads().size());
        }
        if (feasible.isEmpty()) {
            return new BankPlan(List.of(), List.of(), false, 0, 0, missing, TEXTS.text("bank.none"));
        }
        // Whether the options were all found has to be known before the sets are looked for, which may run into the
        // time limit too.
        boolean optionsComplete =
                !stop.getAsBoolean() && choicesComplete && mostParts <= 2 * catalogue.listedParts() + 1;
        PieceSets sets = new PieceSets(choices, stop);
        List<Attempt> attempts = new ArrayList<>();
        for (int[] counts : sets.sets()) {
            PieceSet set = new PieceSet(counts, mostBranches());
            StrapSequence sequence = new StrapSequence(set, shapes(counts), stop);
            StrapSequence.Found found = sequence.find();
            attempts.add(new Attempt(set, found, found.exact() ? found.movedEnds() : sequence.leastMovedEnds()));
            progress.accept(OPTIONS_SHARE
                    + (1 - OPTIONS_SHARE) * attempts.size() / sets.sets().size());
        }
        Attempt best = attempts.stream()
                .min(Comparator.comparingInt(attempt -> attempt.found().movedEnds()))
                .orElseThrow();
        int bound = attempts.stream().mapToInt(Attempt::leastMovedEnds).min().orElseThrow();
        return result(
                best,
                optionsComplete && sets.complete(),
                Math.min(bound, best.found().movedEnds()));
    }

    private record Attempt(PieceSet set, StrapSequence.Found found, int leastMovedEnds) {}

    private int mostBranches() {
        return feasible.stream()
                .mapToInt(load -> request.loads().get(load).branches())
                .max()
                .orElseThrow();
    }

    private void choose(int index) {
        BankPlanRequest.Load load = request.loads().get(index);
        List<BranchOptions.Option> found = BranchOptions.find(load, catalogue, mostParts, stop);
        List<int[]> usages = new ArrayList<>();
        combine(found, 0, load.branches(), new int[kinds.size()], usages);
        if (usages.isEmpty()) {
            missing.add(sentence(load, !found.isEmpty()));
            return;
        }
        feasible.add(index);
        options.add(found);
        choices.add(usages);
    }

    /** Adds up the pieces of all choices of branches that the stock has enough for. */
    private void combine(List<BranchOptions.Option> found, int from, int branches, int[] used, List<int[]> usages) {
        if (branches == 0) {
            usages.add(used);
            return;
        }
        for (int option = from; option < found.size(); option++) {
            if (usages.size() >= MOST_CHOICES) {
                choicesComplete = false;
                return;
            }
            int[] sum = used.clone();
            boolean enough = true;
            for (int kind = 0; kind < sum.length; kind++) {
                sum[kind] += found.get(option).counts()[kind];
                enough &= sum[kind] <= request.stock().items().get(kind).count();
            }
            if (enough) {
                combine(found, option, branches - 1, sum, usages);
            }
        }
    }

    private String sentence(BankPlanRequest.Load load, boolean oneBranchDoes) {
        String ohms = SearchReport.number(load.nominalOhms());
        if (oneBranchDoes) {
            return TEXTS.text("bank.notEnough", ohms, Integer.toString(load.branches()));
        }
        if (stop.getAsBoolean()) {
            return TEXTS.text("bank.endedBefore", ohms);
        }
        SearchRequest one = SearchRequest.of(request.stock(), load.nominalOhms(), mostParts)
                .withErrorLimitRatio(OptionalDouble.of(load.toleranceRatio()))
                .withPowerWatts(load.powerWatts())
                .withAmbientCelsius(request.ambientCelsius())
                .withRanking(1, 1)
                .withTimeLimit(request.timeLimit());
        return TEXTS.text(
                "bank.because", ohms, NetworkSearch.run(one, stop, done -> {}).message());
    }

    /** Returns for each load the shapes that a set of pieces is enough for. */
    private List<List<StrapShape>> shapes(int[] counts) {
        List<List<StrapShape>> shapes = new ArrayList<>();
        for (int place = 0; place < feasible.size(); place++) {
            List<StrapShape> found = new ArrayList<>();
            List<Network> networks = options.get(place).stream()
                    .filter(option ->
                            IntStream.range(0, counts.length).allMatch(kind -> option.counts()[kind] <= counts[kind]))
                    .flatMap(option -> option.networks().stream())
                    .toList();
            int branches = request.loads().get(feasible.get(place)).branches();
            shape(networks, new ArrayList<>(), branches, counts, found);
            shapes.add(found.stream().sorted(SIMPLEST_FIRST).limit(MOST_SHAPES).toList());
        }
        return shapes;
    }

    private void shape(
            List<Network> networks, List<Network> chosen, int branches, int[] counts, List<StrapShape> found) {
        StrapShape shape = StrapShape.of(chosen, kinds);
        int[] left = counts.clone();
        for (int kind : shape.kinds()) {
            left[kind]--;
        }
        if (found.size() == MOST_SHAPES_MADE || Arrays.stream(left).anyMatch(count -> count < 0)) {
            return;
        }
        if (chosen.size() == branches) {
            found.add(shape);
            return;
        }
        for (Network network : networks) {
            chosen.add(network);
            shape(networks, chosen, branches, counts, found);
            chosen.remove(chosen.size() - 1);
        }
    }

    private BankPlan result(Attempt attempt, boolean fewestProven, int bound) {
        PieceSet set = attempt.set();
        StrapSequence.Found found = attempt.found();
        StrapSentences sentences = new StrapSentences(set, kinds);
        List<PieceSet.Placed> placements = set.straightFirst(found.straps());
        List<BankPlan.Strap> straps = new ArrayList<>();
        for (int step = 0; step < found.loads().length; step++) {
            PieceSet.Placed placed = placements.get(step);
            int load = feasible.get(found.loads()[step]);
            int moved = 0;
            List<String> changes = sentences.first(placed);
            if (step > 0) {
                Rewiring rewiring = new Rewiring(placements.get(step - 1).wiring(), placed.wiring());
                moved = rewiring.movedEnds();
                changes = sentences.changes(rewiring);
            }
            straps.add(new BankPlan.Strap(
                    load, branches(placed, set, request.loads().get(load)), moved, changes));
        }
        List<Piece> pieces =
                IntStream.range(0, set.size()).mapToObj(sentences::piece).toList();
        return new BankPlan(
                straps,
                pieces,
                fewestProven,
                found.movedEnds(),
                bound,
                missing,
                message(set, found, fewestProven, bound));
    }

    private List<BankPlan.Branch> branches(PieceSet.Placed placed, PieceSet set, BankPlanRequest.Load load) {
        StrapSentences sentences = new StrapSentences(set, kinds);
        List<BankPlan.Branch> branches = new ArrayList<>();
        int leaf = 0;
        for (Network network : placed.shape().networks()) {
            NetworkAnalysis analysis = NetworkAnalysis.of(network, request.ambientCelsius());
            List<Piece> pieces = new ArrayList<>();
            List<Boolean> turned = new ArrayList<>();
            for (int resistor = 0; resistor < analysis.size(); resistor++) {
                pieces.add(sentences.piece(placed.pieces()[leaf] / 2));
                turned.add(placed.pieces()[leaf] % 2 == 1);
                leaf++;
            }
            Optional<Piece> limiting = analysis.limitingIndex().isPresent()
                    ? Optional.of(pieces.get(analysis.limitingIndex().getAsInt()))
                    : Optional.empty();
            branches.add(new BankPlan.Branch(
                    network,
                    pieces,
                    turned,
                    analysis.ohms(),
                    analysis.ohms() / load.nominalOhms() - 1,
                    analysis.powerLimitWatts(),
                    limiting));
        }
        return branches;
    }

    private String message(PieceSet set, StrapSequence.Found found, boolean fewestProven, int bound) {
        List<String> sentences = new ArrayList<>();
        sentences.add(TEXTS.text(
                "bank.serves", counted("bank.pieces", set.size()), counted("bank.loads", found.loads().length)));
        sentences.add(TEXTS.text(fewestProven ? "bank.fewest" : "bank.notProven"));
        String ends = counted("bank.ends", found.movedEnds());
        sentences.add(
                bound == found.movedEnds()
                        ? TEXTS.text("bank.leastMoves", ends)
                        : TEXTS.text(
                                "bank.moves",
                                ends,
                                Integer.toString(bound),
                                Integer.toString(found.movedEnds() - bound)));
        stop.ending()
                .ifPresent(reason -> sentences.add(
                        TEXTS.text(reason == SearchResult.Ending.CANCELLED ? "bank.cancelled" : "bank.timeLimit")));
        return String.join(" ", sentences);
    }

    private static String counted(String key, int count) {
        return TEXTS.text(key + (count == 1 ? ".one" : ".many"), Integer.toString(count));
    }
}
