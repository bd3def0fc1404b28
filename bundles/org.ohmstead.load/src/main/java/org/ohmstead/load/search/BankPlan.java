// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.ohmstead.load.Network;

/**
 * One set of pieces and how to strap them for each load of a plan. It has as few pieces as will do and, after that, as few ends to move
 * from one strap to the next as were found; the order of the loads is chosen for that.
 *
 * <p>Every piece has two ends, end 1 and end 2, every branch two terminals, A and B. Which end of a piece is end 1 does not matter to its
 * resistance; it is marked once and stays so. Each piece lies with its end 1 to terminal A in the first strap that uses it.
 *
 * <p>A strap joins ends and terminals to nodes; an end that is joined to nothing is alone. The re-wiring between two straps is the least number of ends and terminals that must be moved, each from where it is to another node or
 * to none, until the nodes are those of the next strap. Strapping the first load is not counted. A branch never uses a piece too many:
 * leaving out pieces and joining the rest anew would not do. Of networks alike in resistance, tolerance and power that have the
 * same kind of outermost connection only one is considered, of each set of pieces the four with the smallest error, and of the
 * strappings that these give for a load the twelve simplest.
 *
 * @param straps straps in the order in which to do them; loads that cannot be made are missing
 * @param pieces pieces of the set
 * @param fewestPiecesProven whether no smaller set serves these loads
 * @param movedEnds ends to move in all
 * @param leastMovedEnds lower bound of the ends to move with so few pieces; when it equals {@code movedEnds}, no order and no strapping
 *     of those considered needs fewer
 * @param missing a sentence for each load that cannot be made: what is nearest and what to add
 * @param message what is proven and what is not, in whole sentences
 */
public record BankPlan(
        List<Strap> straps,
        List<Piece> pieces,
        boolean fewestPiecesProven,
        int movedEnds,
        int leastMovedEnds,
        List<String> missing,
        String message) {
    /**
     * A load strapped.
     *
     * @param loadIndex which load of the request, from 0
     * @param branches its branches
     * @param movedEnds ends to move from the strap before; 0 for the first
     * @param changes what to do, in order, a sentence for each. For the first strap: to mark the pieces, then for each joint which ends of
     *     which pieces meet there; terminals and joints have the letters of {@code org.ohmstead.load.drawing}. For the others, from the
     *     strap before: which ends to take off and which to join to what; empty when nothing is to be moved
     */
    public record Strap(int loadIndex, List<Branch> branches, int movedEnds, List<String> changes) {
        public Strap {
            Checks.within(loadIndex, 0, Integer.MAX_VALUE, "loadIndex");
            branches = List.copyOf(branches);
            Checks.within(movedEnds, 0, Integer.MAX_VALUE, "movedEnds");
            changes = List.copyOf(changes);
        }
    }

    /**
     * One branch of a load.
     *
     * @param network its resistors and how they are joined
     * @param pieces which piece each resistor is, in the order of {@link Network#resistors}
     * @param turned for each piece whether it lies the other way round: its end 2 to the side of terminal A, which is drawn on the left,
     *     and its end 1 to that of terminal B
     * @param ohms its resistance in ohms
     * @param errorRatio its resistance relative to the nominal one, less 1
     * @param powerLimitWatts greatest power in watts that loads no piece beyond its rating; empty when one has no rating
     * @param limitingPiece the piece that reaches its rating first; empty when one has no rating
     */
    public record Branch(
            Network network,
            List<Piece> pieces,
            List<Boolean> turned,
            double ohms,
            double errorRatio,
            OptionalDouble powerLimitWatts,
            Optional<Piece> limitingPiece) {
        public Branch {
            Checks.present(network, "network");
            pieces = List.copyOf(pieces);
            turned = List.copyOf(turned);
            Checks.within(turned.size(), pieces.size(), pieces.size(), "number of turned");
            Checks.positive(ohms, "ohms");
            Checks.finite(errorRatio, "errorRatio");
            Checks.present(powerLimitWatts, "powerLimitWatts");
            Checks.present(limitingPiece, "limitingPiece");
        }
    }

    public BankPlan {
        straps = List.copyOf(straps);
        pieces = List.copyOf(pieces);
        Checks.within(movedEnds, 0, Integer.MAX_VALUE, "movedEnds");
        Checks.within(leastMovedEnds, 0, movedEnds, "leastMovedEnds");
        missing = List.copyOf(missing);
        Checks.present(message, "message");
    }

    /**
     * Plans the bank until it is proven best, the time is over or it is cancelled; it then gives the best so far.
     *
     * @param request what is wanted
     * @param cancelled asked every now and then from this thread; true ends the search
     * @param progress told every now and then from this thread how much is done, 0 to 1
     */
    public static BankPlan find(BankPlanRequest request, BooleanSupplier cancelled, DoubleConsumer progress) {
        Checks.present(request, "request");
        Checks.present(cancelled, "cancelled");
        Checks.present(progress, "progress");
        return new BankPlanner(request, new Stop(cancelled, request.timeLimit()), progress).plan();
    }
}
