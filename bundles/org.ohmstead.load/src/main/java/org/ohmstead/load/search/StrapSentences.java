// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.load.Network;
import org.ohmstead.units.text.Messages;

/** Says in sentences how to strap a bank and what to change at it. */
final class StrapSentences {
    private static final Messages TEXTS = Messages.of(StrapSentences.class);

    private static final int LETTERS = 26;

    private final PieceSet set;
    private final Kinds kinds;

    StrapSentences(PieceSet set, Kinds kinds) {
        this.set = set;
        this.kinds = kinds;
    }

    Piece piece(int piece) {
        return new Piece(kinds.resistor(set.kind(piece)).id(), set.number(piece));
    }

    /** Returns how to strap a bank whose pieces lie loose: how to mark them, then what meets at each joint, branch by branch. */
    List<String> first(PieceSet.Placed placed) {
        List<String> sentences = new ArrayList<>();
        sentences.add(TEXTS.text("strap.tag"));
        int[] next = {0};
        int branch = 1;
        for (Network network : placed.shape().networks()) {
            List<List<String>> joints = new ArrayList<>(List.of(new ArrayList<>(), new ArrayList<>()));
            collect(network, 0, 1, placed.pieces(), next, joints);
            for (int joint = 0; joint < joints.size(); joint++) {
                sentences.add(TEXTS.text(
                        joint < 2 ? "strap.toTerminal" : "strap.atJoint",
                        listed(joints.get(joint)),
                        letter(joint),
                        Integer.toString(branch)));
            }
            branch++;
        }
        return sentences;
    }

    /** Collects the ends at each joint, numbered in the order in which a drawing letters them: the terminals are 0 and 1. */
    private void collect(Network network, int left, int right, int[] pieces, int[] next, List<List<String>> joints) {
        if (network instanceof Network.Series series) {
            int from = left;
            int last = series.members().size() - 1;
            for (int member = 0; member <= last; member++) {
                int to = right;
                if (member < last) {
                    to = joints.size();
                    joints.add(new ArrayList<>());
                }
                collect(series.members().get(member), from, to, pieces, next, joints);
                from = to;
            }
        } else if (network instanceof Network.Parallel parallel) {
            parallel.members().forEach(member -> collect(member, left, right, pieces, next, joints));
        } else {
            joints.get(left).add(end(pieces[next[0]]));
            joints.get(right).add(end(pieces[next[0]] ^ 1));
            next[0]++;
        }
    }

    private static String listed(List<String> ends) {
        int last = ends.size() - 1;
        return last == 0
                ? ends.get(0)
                : TEXTS.text("strap.list", String.join(", ", ends.subList(0, last)), ends.get(last));
    }

    private static String letter(int joint) {
        String last = String.valueOf((char) ('A' + joint % LETTERS));
        return joint < LETTERS ? last : letter(joint / LETTERS - 1) + last;
    }

    /** Returns what to do, first what is taken off, then what is joined. */
    List<String> changes(Rewiring rewiring) {
        List<Integer> moves = rewiring.moves();
        List<String> off = new ArrayList<>();
        List<String> on = new ArrayList<>();
        Set<Integer> done = new HashSet<>();
        for (int end : moves) {
            int partner = rewiring.partner(end);
            if (partner >= 0) {
                on.add(TEXTS.text("strap.join", end(end), end(partner)));
            } else if (takenOut(rewiring, end)) {
                if (done.add(end / 2)) {
                    off.add(TEXTS.text("strap.out", piece(end / 2)));
                }
            } else {
                off.add(TEXTS.text("strap.off", end(end)));
            }
        }
        off.addAll(on);
        return off;
    }

    private boolean takenOut(Rewiring rewiring, int end) {
        return end / 2 < set.size() && rewiring.alone(end) && rewiring.alone(end ^ 1);
    }

    private String end(int end) {
        if (end / 2 < set.size()) {
            return TEXTS.text("strap.end", Integer.toString(end % 2 + 1), piece(end / 2));
        }
        int branch = end / 2 - set.size();
        return TEXTS.text("strap.terminal", letter(end % 2), Integer.toString(branch + 1));
    }
}
