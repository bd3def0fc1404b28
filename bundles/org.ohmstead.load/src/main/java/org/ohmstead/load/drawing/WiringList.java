// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.units.text.Messages;

/**
 * How to wire a network: its pieces, the joints between them, numbered steps, what a meter must show, and what can hurt. The joints are
 * named as in {@link NetworkDrawing}: A and B are the terminals.
 *
 * @param pieces one for each resistor, from left to right
 * @param joints A, B, then the others
 * @param steps what to do, one sentence or more each, in order
 * @param ohms what a meter reads between A and B when everything has its stated value
 * @param lowOhms the least it may read, every resistor at the low end of its tolerance
 * @param highOhms the most it may read
 * @param cautions what can hurt
 */
public record WiringList(
        List<Piece> pieces,
        List<Joint> joints,
        List<String> steps,
        double ohms,
        double lowOhms,
        double highOhms,
        List<String> cautions) {
    private static final Messages TEXTS = Messages.of(WiringList.class);

    public WiringList {
        pieces = List.copyOf(pieces);
        joints = List.copyOf(joints);
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
    }

    /**
     * What the network is for.
     *
     * @param powerWatts power into it, above 0; empty when none is named
     * @param ambientCelsius temperature of the air
     * @param bridged whether it hangs between two outputs in opposite phase, so that neither terminal is at ground
     */
    public record Use(OptionalDouble powerWatts, double ambientCelsius, boolean bridged) {
        private static final double USUAL_AMBIENT_CELSIUS = 25;

        public Use {
            Checks.positive(powerWatts, "powerWatts");
            Checks.finite(ambientCelsius, "ambientCelsius");
        }

        /** Returns use at a power in watts, above 0, in air of 25 degrees Celsius, on one output that has a ground. */
        public static Use of(double powerWatts) {
            return new Use(OptionalDouble.of(powerWatts), USUAL_AMBIENT_CELSIUS, false);
        }

        /** Returns this use between two outputs in opposite phase, or not. */
        public Use withBridged(boolean newBridged) {
            return new Use(powerWatts, ambientCelsius, newBridged);
        }
    }

    /**
     * One resistor.
     *
     * @param label what is written on its tag: its id, and a number where there are several of the kind
     * @param ohms its value in ohms
     * @param lowOhms the least it may measure
     * @param highOhms the most it may measure
     * @param left name of the joint of its first lead
     * @param right name of the joint of its second lead
     * @param share its part of the power
     * @param powerWatts what it takes; empty without a power
     * @param ampsRms the current through it; empty without a power
     * @param allowedWatts what it may take for as long as one likes; empty without a rating
     */
    public record Piece(
            String label,
            double ohms,
            double lowOhms,
            double highOhms,
            String left,
            String right,
            double share,
            OptionalDouble powerWatts,
            OptionalDouble ampsRms,
            OptionalDouble allowedWatts) {}

    /**
     * A place where leads meet.
     *
     * @param name its letter
     * @param leads which: "8R2 lead 1"
     * @param ampsRms the current through it; empty without a power
     */
    public record Joint(String name, List<String> leads, OptionalDouble ampsRms) {
        public Joint {
            leads = List.copyOf(leads);
        }
    }

    /**
     * Returns how to wire a network.
     *
     * @param network which
     * @param use what for
     */
    public static WiringList of(Network network, Use use) {
        Checks.present(network, "network");
        Checks.present(use, "use");
        return new WiringMaker(NetworkAnalysis.of(network, use.ambientCelsius()), use).make();
    }

    /** Returns the whole as plain text: cautions first, then steps, then the tables of joints and pieces. */
    public String text() {
        StringBuilder out = new StringBuilder();
        out.append(TEXTS.text("list.cautions")).append('\n');
        cautions.forEach(caution -> out.append("! ").append(caution).append('\n'));
        out.append('\n').append(TEXTS.text("list.steps")).append('\n');
        for (int i = 0; i < steps.size(); i++) {
            out.append(i + 1).append(". ").append(steps.get(i)).append('\n');
        }
        List<List<String>> jointRows = new ArrayList<>();
        jointRows.add(List.of(TEXTS.text("list.joint"), TEXTS.text("list.current"), TEXTS.text("list.leads")));
        joints.forEach(joint ->
                jointRows.add(List.of(joint.name(), text(joint.ampsRms(), " A"), String.join(", ", joint.leads()))));
        out.append('\n').append(TEXTS.text("list.joints")).append('\n').append(TextTable.of(jointRows));
        List<List<String>> pieceRows = new ArrayList<>();
        pieceRows.add(List.of(
                TEXTS.text("list.piece"),
                TEXTS.text("list.ohms"),
                TEXTS.text("list.from"),
                TEXTS.text("list.to"),
                TEXTS.text("list.share"),
                TEXTS.text("list.watts"),
                TEXTS.text("list.mayTake"),
                TEXTS.text("list.amperes")));
        pieces.forEach(piece -> pieceRows.add(List.of(
                piece.label(),
                Figures.ohms(piece.ohms()),
                piece.left(),
                piece.right(),
                Figures.percent(piece.share()),
                text(piece.powerWatts(), " W"),
                text(piece.allowedWatts(), " W"),
                text(piece.ampsRms(), " A"))));
        return out.append('\n')
                .append(TEXTS.text("list.pieces"))
                .append('\n')
                .append(TextTable.of(pieceRows))
                .toString();
    }

    private static String text(OptionalDouble value, String unit) {
        return value.isPresent() ? Figures.digits(value.getAsDouble(), 3) + unit : "-";
    }
}
