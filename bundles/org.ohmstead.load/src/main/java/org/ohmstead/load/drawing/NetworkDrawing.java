// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;

/**
 * A network as a schematic between its two terminals, from left to right: what is in series stands in a row, what is in parallel is
 * stacked between two rails. Resistors are the rectangles of IEC 60617, wires are straight and run along the axes. All places are whole
 * points from the upper left corner, x to the right, y downwards. Wires end where they meet others, so that two are joined exactly when
 * they share an end.
 *
 * @param width of the whole
 * @param height of the whole
 * @param wires in no particular order
 * @param bodies one for each resistor, numbered from left to right as in {@link Network#resistors()}
 * @param dots where three or more wires meet
 * @param joints the two terminals, A on the left and B on the right, then every other place where leads meet
 * @param labels all texts
 */
public record NetworkDrawing(
        int width,
        int height,
        List<Wire> wires,
        List<Body> bodies,
        List<Place> dots,
        List<Joint> joints,
        List<Label> labels) {
    /** The radius of a junction's dot. */
    public static final int DOT_RADIUS = 3;

    /** The radius of a terminal's circle. */
    public static final int TERMINAL_RADIUS = 5;

    /** Shares do not depend on it. */
    private static final double AMBIENT_CELSIUS = 25;

    public NetworkDrawing {
        wires = List.copyOf(wires);
        bodies = List.copyOf(bodies);
        dots = List.copyOf(dots);
        joints = List.copyOf(joints);
        labels = List.copyOf(labels);
    }

    /**
     * A place.
     *
     * @param x points from the left
     * @param y points from the top
     */
    public record Place(int x, int y) {
        Place moved(int right, int down) {
            return new Place(x + right, y + down);
        }
    }

    /**
     * An upright rectangle.
     *
     * @param x its left side
     * @param y its upper side
     * @param width at least 0
     * @param height at least 0
     */
    public record Box(int x, int y, int width, int height) {
        /** Returns whether two rectangles have more in common than their edges. */
        public boolean overlaps(Box other) {
            return x < other.x + other.width
                    && other.x < x + width
                    && y < other.y + other.height
                    && other.y < y + height;
        }
    }

    /**
     * A wire that does not branch.
     *
     * @param places its two ends and its corners between them, at least two
     * @param currentRatio the current in it over that through the network, 0 to 1
     */
    public record Wire(List<Place> places, double currentRatio) {
        public Wire {
            places = List.copyOf(places);
            if (places.size() < 2) {
                throw new IllegalArgumentException(
                        "places has " + places.size() + " entries; a wire needs at least its two ends");
            }
            Checks.ratio(currentRatio, "currentRatio");
        }

        /** Returns one end. */
        public Place start() {
            return places.get(0);
        }

        /** Returns the other end. */
        public Place end() {
            return places.get(places.size() - 1);
        }
    }

    /**
     * A resistor; its leads come out at the middle of its left and its right side.
     *
     * @param index its number in the network, from 0
     * @param box where it stands
     * @param share its part of the network's power, above 0 and at most 1
     */
    public record Body(int index, Box box, double share) {
        public Body {
            Checks.present(box, "box");
            Checks.ratio(share, "share");
        }

        /** Returns where its left lead comes out. */
        public Place left() {
            return new Place(box.x(), box.y() + box.height() / 2);
        }

        /** Returns where its right lead comes out. */
        public Place right() {
            return new Place(box.x() + box.width(), box.y() + box.height() / 2);
        }
    }

    /**
     * A place with a name where leads meet.
     *
     * @param name a letter, or several after Z
     * @param place on the wire
     * @param terminal whether the amplifier is joined there
     */
    public record Joint(String name, Place place, boolean terminal) {}

    /** What a text says. */
    public enum Role {
        /** What a resistor is called. */
        ID,
        /** Its value in ohms. */
        VALUE,
        /** Its share of the power, and the power where it is known. */
        SHARE,
        /** The name of a joint. */
        JOINT
    }

    /**
     * A text, centred.
     *
     * @param text what it says
     * @param role what about
     * @param centreX its middle
     * @param baselineY the line that its letters stand on
     * @param fontPoints size of the font
     */
    public record Label(String text, Role role, int centreX, int baselineY, int fontPoints) {
        /** Returns the room that is kept for it: enough for the usual sans-serif fonts. */
        public Box box() {
            int width = TextRoom.width(text, fontPoints);
            int ascent = TextRoom.ascent(fontPoints);
            return new Box(centreX - width / 2, baselineY - ascent, width, ascent + TextRoom.descent(fontPoints));
        }
    }

    /** Returns the schematic of a network, with values and shares of the power. */
    public static NetworkDrawing of(Network network) {
        return of(network, OptionalDouble.empty());
    }

    /**
     * Returns the schematic of a network.
     *
     * @param network which
     * @param powerWatts power into it, above 0, to show what each resistor takes; empty to show shares only
     */
    public static NetworkDrawing of(Network network, OptionalDouble powerWatts) {
        Checks.present(network, "network");
        Checks.positive(powerWatts, "powerWatts");
        return new DrawingMaker(NetworkAnalysis.of(network, AMBIENT_CELSIUS), powerWatts).make();
    }

    /** Returns the wires in as few pieces as they can be drawn in: those that merely go on in one another are one, with its corners. */
    public List<Wire> runs() {
        return WireRuns.of(wires);
    }

    /** Returns the boxes of all that must not be drawn over: bodies and texts. */
    public List<Box> boxes() {
        List<Box> boxes = new ArrayList<>();
        bodies.forEach(body -> boxes.add(body.box()));
        labels.forEach(label -> boxes.add(label.box()));
        return boxes;
    }
}
