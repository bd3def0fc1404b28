// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.drawing.NetworkDrawing.Body;
import org.ohmstead.load.drawing.NetworkDrawing.Box;
import org.ohmstead.load.drawing.NetworkDrawing.Label;
import org.ohmstead.load.drawing.NetworkDrawing.Place;
import org.ohmstead.load.drawing.NetworkDrawing.Role;
import org.ohmstead.load.drawing.NetworkDrawing.Wire;

class NetworkDrawingTest {
    private static final double SOLVED_RATIO = 1e-9;

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    private static Network network(int seed) {
        return DrawnNetworks.next(new Random(seed), 1 + seed % 30);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void nothingLiesOverAnythingElse(int seed) {
        NetworkDrawing drawing = NetworkDrawing.of(network(seed), OptionalDouble.of(1234));
        List<Box> boxes = drawing.boxes();
        Box whole = new Box(0, 0, drawing.width(), drawing.height());
        for (int i = 0; i < boxes.size(); i++) {
            Box box = boxes.get(i);
            assertTrue(box.x() >= 0 && box.y() >= 0, () -> box + " in " + whole);
            assertTrue(box.x() + box.width() <= whole.width(), () -> box + " in " + whole);
            assertTrue(box.y() + box.height() <= whole.height(), () -> box + " in " + whole);
            for (int j = 0; j < i; j++) {
                assertFalse(box.overlaps(boxes.get(j)), box + " and " + boxes.get(j));
            }
        }
        for (Wire wire : drawing.wires()) {
            for (Box box : boxes) {
                assertFalse(crosses(wire, box), () -> wire + " through " + box);
            }
        }
    }

    private static boolean crosses(Wire wire, Box box) {
        for (int i = 1; i < wire.places().size(); i++) {
            Place from = wire.places().get(i - 1);
            Place to = wire.places().get(i);
            boolean besideX =
                    Math.max(from.x(), to.x()) <= box.x() || Math.min(from.x(), to.x()) >= box.x() + box.width();
            boolean besideY =
                    Math.max(from.y(), to.y()) <= box.y() || Math.min(from.y(), to.y()) >= box.y() + box.height();
            if (!besideX && !besideY) {
                return true;
            }
        }
        return false;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void wiresRunAlongTheAxesAndTouchOnlyAtTheirEnds(int seed) {
        List<Wire> wires = NetworkDrawing.of(network(seed)).wires();
        for (Wire wire : wires) {
            assertTrue(
                    wire.start().x() == wire.end().x()
                            || wire.start().y() == wire.end().y(),
                    wire::toString);
            assertFalse(wire.start().equals(wire.end()), wire::toString);
            for (Wire other : wires) {
                for (Place end : List.of(other.start(), other.end())) {
                    boolean atEnd = end.equals(wire.start()) || end.equals(wire.end());
                    assertTrue(atEnd || !within(end, wire), () -> end + " on " + wire);
                }
                boolean upright = wire.start().x() == wire.end().x();
                boolean otherUpright = other.start().x() == other.end().x();
                assertFalse(upright && !otherUpright && cross(wire, other), () -> wire + " across " + other);
            }
        }
    }

    private static boolean within(Place place, Wire wire) {
        return Math.min(wire.start().x(), wire.end().x()) <= place.x()
                && place.x() <= Math.max(wire.start().x(), wire.end().x())
                && Math.min(wire.start().y(), wire.end().y()) <= place.y()
                && place.y() <= Math.max(wire.start().y(), wire.end().y());
    }

    private static boolean cross(Wire upright, Wire level) {
        int x = upright.start().x();
        int y = level.start().y();
        return Math.min(level.start().x(), level.end().x()) < x
                && x < Math.max(level.start().x(), level.end().x())
                && Math.min(upright.start().y(), upright.end().y()) < y
                && y < Math.max(upright.start().y(), upright.end().y());
    }

    /** Whoever builds what is drawn gets the network: Kirchhoff's laws on the drawing's wires give its resistance. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theWiresMakeTheNetwork(int seed) {
        Network network = network(seed);
        NetworkDrawing drawing = NetworkDrawing.of(network);
        Nodes<Place> nodes = new Nodes<>();
        drawing.wires().forEach(wire -> nodes.join(wire.start(), wire.end()));
        assertEquals(network.resistors().size(), drawing.bodies().size());
        for (Body body : drawing.bodies()) {
            nodes.resistor(
                    body.left(),
                    body.right(),
                    network.resistors().get(body.index()).ohms());
        }
        Place left = drawing.joints().get(0).place();
        Place right = drawing.joints().get(1).place();
        assertEquals(network.ohms(), nodes.ohms(left, right), SOLVED_RATIO * network.ohms());
        // Each named joint is a node of its own, and there are no others.
        assertEquals(nodes.size(), drawing.joints().size());
        assertEquals(
                nodes.size(),
                drawing.joints().stream()
                        .map(joint -> nodes.root(joint.place()))
                        .distinct()
                        .count());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aDotMarksExactlyWhereThreeWiresMeet(int seed) {
        NetworkDrawing drawing = NetworkDrawing.of(network(seed));
        List<Place> ends = drawing.wires().stream()
                .flatMap(wire -> List.of(wire.start(), wire.end()).stream())
                .toList();
        List<Place> branching = ends.stream()
                .distinct()
                .filter(place -> ends.stream().filter(place::equals).count() > 2)
                .toList();
        assertEquals(List.copyOf(branching).size(), drawing.dots().size());
        assertTrue(drawing.dots().containsAll(branching));
    }

    /** Kirchhoff's current law at every end of a wire that is no terminal. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theThicknessesFollowTheCurrents(int seed) {
        Network network = network(seed);
        NetworkDrawing drawing = NetworkDrawing.of(network);
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
        for (Body body : drawing.bodies()) {
            double current = drawing.wires().stream()
                    .filter(wire -> wire.end().equals(body.left()))
                    .findFirst()
                    .orElseThrow()
                    .currentRatio();
            // P_i / P = (I_i / I)^2 R_i / R
            double share = current * current * analysis.resistor(body.index()).ohms() / analysis.ohms();
            assertEquals(analysis.share(body.index()), share, SOLVED_RATIO);
            assertEquals(share, body.share(), SOLVED_RATIO);
        }
    }

    /** What is drawn in one go is as long as the wires that it is made of, and joins the same places. */
    @ParameterizedTest
    @MethodSource("seeds")
    void runsAreTheWiresJoined(int seed) {
        NetworkDrawing drawing = NetworkDrawing.of(network(seed));
        assertEquals(length(drawing.wires()), length(drawing.runs()));
        assertTrue(drawing.runs().size() <= drawing.wires().size());
        Nodes<Place> wires = new Nodes<>();
        drawing.wires().forEach(wire -> wires.join(wire.start(), wire.end()));
        drawing.runs().forEach(run -> run.places()
                .forEach(place -> assertEquals(wires.root(run.start()), wires.root(place))));
    }

    private static int length(List<Wire> wires) {
        return wires.stream()
                .mapToInt(wire -> IntStream.range(1, wire.places().size())
                        .map(i -> Math.abs(wire.places().get(i).x()
                                        - wire.places().get(i - 1).x())
                                + Math.abs(wire.places().get(i).y()
                                        - wire.places().get(i - 1).y()))
                        .sum())
                .sum();
    }

    @Test
    void aRowIsDrawnInOneGoBetweenItsBodies() {
        // From A to the first body, on to the second, on to B.
        assertEquals(3, NetworkDrawing.of(DrawnNetworks.read("8R2+8R2")).runs().size());
    }

    @Test
    void saysValueShareAndPower() {
        NetworkDrawing drawing = NetworkDrawing.of(DrawnNetworks.read("(8R2||8R2)+0R47"), OptionalDouble.of(100));
        // 4.1 ohm and 0.47 ohm in series: 0.47 / 4.57 = 10.28 %, the rest in two equal halves of 44.86 %.
        List<String> shares = texts(drawing, Role.SHARE);
        assertEquals(List.of("44.9 %, 44.9 W", "44.9 %, 44.9 W", "10.3 %, 10.3 W"), shares);
        assertEquals(List.of("8.2 \u03a9", "8.2 \u03a9", "0.47 \u03a9"), texts(drawing, Role.VALUE));
        assertEquals(
                List.of("A", "B", "C"),
                texts(drawing, Role.JOINT).stream().sorted().toList());
    }

    private static List<String> texts(NetworkDrawing drawing, Role role) {
        return drawing.labels().stream()
                .filter(label -> label.role() == role)
                .map(Label::text)
                .toList();
    }

    @Test
    void namesJointsBeyondZ() {
        assertEquals("Z", JointNames.name(25));
        assertEquals("AA", JointNames.name(26));
        assertEquals("AB", JointNames.name(27));
        assertEquals("BA", JointNames.name(52));
    }

    @Test
    void refusesAPowerThatIsNone() {
        Network network = DrawnNetworks.read("8R2");
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> NetworkDrawing.of(network, OptionalDouble.of(0)));
        assertTrue(refused.getMessage().contains("powerWatts is 0.0"), refused::getMessage);
    }
}
