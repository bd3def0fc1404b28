// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.drawing.NetworkDrawing.Role;

/**
 * A part of a network with the room that it takes, all labels included: so wide, so far above and below the wire that leads through it.
 */
sealed interface Block {
    int BODY_WIDTH = 48;
    int BODY_HEIGHT = 18;
    int LEAD = 8;
    int BESIDE_LABELS = 8;
    int LABEL_FONT = 11;
    int SHARE_FONT = 10;
    int FROM_BODY = 3;
    int JOINT_GAP = 28;
    int RAIL = 12;
    int BETWEEN_BRANCHES = 6;
    int LONGEST_ID = 16;
    int SNAP = 14;

    int width();

    int above();

    int below();

    double siemens();

    /** A text and how it is set. */
    record Words(String text, Role role, int fontPoints) {
        int width() {
            return TextRoom.width(text, fontPoints);
        }
    }

    /** One resistor: its id and value above it, its share below. */
    record Single(int index, double siemens, double share, Words id, Words value, Words shareOfPower) implements Block {
        @Override
        public int width() {
            int labels = Math.max(id.width() + BESIDE_LABELS + value.width(), shareOfPower.width());
            return Math.max(BODY_WIDTH + 2 * LEAD, labels + BESIDE_LABELS);
        }

        @Override
        public int above() {
            return BODY_HEIGHT / 2 + FROM_BODY + TextRoom.ascent(LABEL_FONT) + TextRoom.descent(LABEL_FONT);
        }

        @Override
        public int below() {
            return BODY_HEIGHT / 2 + FROM_BODY + TextRoom.ascent(SHARE_FONT) + TextRoom.descent(SHARE_FONT);
        }
    }

    /** Blocks in a row. */
    record Row(List<Block> members, double siemens) implements Block {
        @Override
        public int width() {
            return members.stream().mapToInt(Block::width).sum() + (members.size() - 1) * JOINT_GAP;
        }

        @Override
        public int above() {
            return members.stream().mapToInt(Block::above).max().orElseThrow();
        }

        @Override
        public int below() {
            return members.stream().mapToInt(Block::below).max().orElseThrow();
        }
    }

    /** Blocks stacked between two rails. */
    record Stack(List<Block> members, double siemens) implements Block {
        @Override
        public int width() {
            return inner() + 2 * RAIL;
        }

        int inner() {
            return members.stream().mapToInt(Block::width).max().orElseThrow();
        }

        /** Returns how far below the upper edge each member's wire lies. */
        List<Integer> axes() {
            List<Integer> axes = new ArrayList<>();
            int top = 0;
            for (Block member : members) {
                axes.add(top + member.above());
                top += member.above() + member.below() + BETWEEN_BRANCHES;
            }
            return axes;
        }

        /** The wire comes in half-way between the first and the last member, or at a member's own wire that is almost there. */
        @Override
        public int above() {
            List<Integer> axes = axes();
            int middle = (axes.get(0) + axes.get(axes.size() - 1)) / 2;
            return axes.stream()
                    .filter(axis -> Math.abs(axis - middle) < SNAP)
                    .findFirst()
                    .orElse(middle);
        }

        @Override
        public int below() {
            int height = members.stream()
                            .mapToInt(member -> member.above() + member.below())
                            .sum()
                    + (members.size() - 1) * BETWEEN_BRANCHES;
            return height - above();
        }
    }

    /** Returns the room for a network whose resistors are numbered from {@code start} on. */
    static Block of(Network network, int start, NetworkAnalysis analysis, OptionalDouble powerWatts) {
        if (network instanceof Network.Single) {
            return single(start, analysis, powerWatts);
        }
        boolean series = network instanceof Network.Series;
        List<Network> members = series ? ((Network.Series) network).members() : ((Network.Parallel) network).members();
        List<Block> blocks = new ArrayList<>();
        int position = start;
        for (Network member : members) {
            blocks.add(of(member, position, analysis, powerWatts));
            position += NetworkAnalysis.pieces(member);
        }
        double siemens = 1 / network.ohms();
        return series ? new Row(List.copyOf(blocks), siemens) : new Stack(List.copyOf(blocks), siemens);
    }

    private static Single single(int index, NetworkAnalysis analysis, OptionalDouble powerWatts) {
        String id = analysis.resistor(index).id();
        String shortened = id.length() > LONGEST_ID ? id.substring(0, LONGEST_ID - 1) + "\u2026" : id;
        double ohms = analysis.resistor(index).ohms();
        double share = analysis.share(index);
        String power = powerWatts.isPresent()
                ? ", " + Figures.watts(analysis.powerWatts(index, powerWatts.getAsDouble()))
                : "";
        return new Single(
                index,
                1 / ohms,
                share,
                new Words(shortened, Role.ID, LABEL_FONT),
                new Words(Figures.ohms(ohms), Role.VALUE, LABEL_FONT),
                new Words(Figures.percent(share) + power, Role.SHARE, SHARE_FONT));
    }
}
