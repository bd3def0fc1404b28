// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.drawing.NetworkDrawing.Body;
import org.ohmstead.load.drawing.NetworkDrawing.Box;
import org.ohmstead.load.drawing.NetworkDrawing.Joint;
import org.ohmstead.load.drawing.NetworkDrawing.Label;
import org.ohmstead.load.drawing.NetworkDrawing.Place;
import org.ohmstead.load.drawing.NetworkDrawing.Role;
import org.ohmstead.load.drawing.NetworkDrawing.Wire;

/** Puts the blocks of a network in their places and joins them by wires. */
final class DrawingMaker {
    private static final int MARGIN = 10;
    private static final int TERMINAL_LEAD = 26;
    private static final int NAME_FONT = 11;
    private static final int NAME_ABOVE_WIRE = 6;
    private static final int NAME_ABOVE_TERMINAL = 10;

    private final Block whole;
    private final List<Wire> wires = new ArrayList<>();
    private final List<Body> bodies = new ArrayList<>();
    private final List<Place> dots = new ArrayList<>();
    private final List<Joint> joints = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();
    private final JointNames names = new JointNames();

    DrawingMaker(NetworkAnalysis analysis, OptionalDouble powerWatts) {
        whole = Block.of(analysis.network(), 0, analysis, powerWatts);
    }

    NetworkDrawing make() {
        int axis = MARGIN + whole.above();
        Place left = new Place(MARGIN + NetworkDrawing.TERMINAL_RADIUS, axis);
        Place start = left.moved(TERMINAL_LEAD, 0);
        Place end = start.moved(whole.width(), 0);
        Place right = end.moved(TERMINAL_LEAD, 0);
        terminal(JointNames.LEFT, left);
        terminal(JointNames.RIGHT, right);
        wire(left, start, 1);
        place(whole, start, 1);
        wire(end, right, 1);
        int width = right.x() + NetworkDrawing.TERMINAL_RADIUS + MARGIN;
        int height = 2 * MARGIN + whole.above() + whole.below();
        return new NetworkDrawing(width, height, wires, bodies, dots, joints, labels);
    }

    private void terminal(int joint, Place place) {
        String name = JointNames.name(joint);
        joints.add(new Joint(name, place, true));
        labels.add(new Label(name, Role.JOINT, place.x(), place.y() - NAME_ABOVE_TERMINAL, NAME_FONT));
    }

    private void wire(Place from, Place to, double currentRatio) {
        wires.add(new Wire(List.of(from, to), Math.min(1, currentRatio)));
    }

    private void place(Block block, Place start, double currentRatio) {
        if (block instanceof Block.Single single) {
            place(single, start, currentRatio);
        } else if (block instanceof Block.Row row) {
            place(row, start, currentRatio);
        } else if (block instanceof Block.Stack stack) {
            place(stack, start, currentRatio);
        }
    }

    private void place(Block.Single single, Place start, double currentRatio) {
        int lead = (single.width() - Block.BODY_WIDTH) / 2;
        Box box = new Box(start.x() + lead, start.y() - Block.BODY_HEIGHT / 2, Block.BODY_WIDTH, Block.BODY_HEIGHT);
        Body body = new Body(single.index(), box, single.share());
        bodies.add(body);
        wire(start, body.left(), currentRatio);
        wire(body.right(), start.moved(single.width(), 0), currentRatio);
        int middle = start.x() + single.width() / 2;
        int above = box.y() - Block.FROM_BODY - TextRoom.descent(Block.LABEL_FONT);
        int room = single.id().width() + Block.BESIDE_LABELS + single.value().width();
        label(single.id(), middle - room / 2 + single.id().width() / 2, above);
        label(single.value(), middle + room / 2 - single.value().width() / 2, above);
        int below = box.y() + box.height() + Block.FROM_BODY + TextRoom.ascent(Block.SHARE_FONT);
        label(single.shareOfPower(), middle, below);
    }

    private void label(Block.Words words, int centreX, int baselineY) {
        labels.add(new Label(words.text(), words.role(), centreX, baselineY, words.fontPoints()));
    }

    private void place(Block.Row row, Place start, double currentRatio) {
        Place at = start;
        int last = row.members().size() - 1;
        for (int i = 0; i <= last; i++) {
            Block member = row.members().get(i);
            // Named before what is inside the member, as the wiring list does.
            String name = i < last ? JointNames.name(names.another()) : "";
            place(member, at, currentRatio);
            at = at.moved(member.width(), 0);
            if (i < last) {
                Place joint = at.moved(Block.JOINT_GAP / 2, 0);
                Place next = at.moved(Block.JOINT_GAP, 0);
                wire(at, joint, currentRatio);
                wire(joint, next, currentRatio);
                joints.add(new Joint(name, joint, false));
                labels.add(new Label(name, Role.JOINT, joint.x(), joint.y() - NAME_ABOVE_WIRE, NAME_FONT));
                at = next;
            }
        }
    }

    private void place(Block.Stack stack, Place start, double currentRatio) {
        int top = start.y() - stack.above();
        Place left = start.moved(Block.RAIL, 0);
        Place right = left.moved(stack.inner(), 0);
        wire(start, left, currentRatio);
        wire(right, start.moved(stack.width(), 0), currentRatio);
        List<Integer> axes = new ArrayList<>();
        double[] currents = new double[stack.members().size()];
        for (int i = 0; i < currents.length; i++) {
            Block member = stack.members().get(i);
            int axis = top + stack.axes().get(i);
            axes.add(axis);
            currents[i] = currentRatio * member.siemens() / stack.siemens();
            int lead = (stack.inner() - member.width()) / 2;
            Place from = new Place(left.x() + lead, axis);
            if (lead > 0) {
                wire(new Place(left.x(), axis), from, currents[i]);
            }
            place(member, from, currents[i]);
            Place to = from.moved(member.width(), 0);
            if (to.x() < right.x()) {
                wire(to, new Place(right.x(), axis), currents[i]);
            }
        }
        rail(left.x(), start.y(), axes, currents);
        rail(right.x(), start.y(), axes, currents);
    }

    /** Draws a rail in pieces from one branching to the next; a dot wherever it is more than a corner. */
    private void rail(int x, int entry, List<Integer> axes, double[] currents) {
        TreeSet<Integer> stops = new TreeSet<>(axes);
        stops.add(entry);
        int before = stops.first();
        for (int stop : stops.tailSet(before, false)) {
            double current = 0;
            for (int i = 0; i < currents.length; i++) {
                boolean beyond = stop <= entry ? axes.get(i) <= before : axes.get(i) >= stop;
                current += beyond ? currents[i] : 0;
            }
            wire(new Place(x, before), new Place(x, stop), current);
            before = stop;
        }
        for (int stop : stops) {
            boolean corner = stop == axes.get(0) || stop == axes.get(axes.size() - 1);
            if (!corner) {
                dots.add(new Place(x, stop));
            }
        }
    }
}
