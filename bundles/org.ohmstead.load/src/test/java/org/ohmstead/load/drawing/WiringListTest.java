// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.load.Network;
import org.ohmstead.load.PowerRating;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.drawing.WiringList.Joint;
import org.ohmstead.load.drawing.WiringList.Piece;
import org.ohmstead.load.drawing.WiringList.Use;
import org.ohmstead.model.PartTraits;

class WiringListTest {
    private static final double SOLVED_RATIO = 1e-9;

    static IntStream seeds() {
        return IntStream.range(0, 100);
    }

    /** Whoever follows the joints gets the network, and every lead is used once. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theJointsMakeTheNetwork(int seed) {
        Network network = DrawnNetworks.next(new Random(seed), 1 + seed % 30);
        WiringList list = WiringList.of(network, Use.of(100));
        Map<String, String> jointOfLead = new HashMap<>();
        for (Joint joint : list.joints()) {
            for (String lead : joint.leads()) {
                assertEquals(null, jointOfLead.put(lead, joint.name()), lead);
            }
        }
        assertEquals(2 * network.resistors().size(), jointOfLead.size());
        Nodes<String> nodes = new Nodes<>();
        for (Piece piece : list.pieces()) {
            String left = jointOfLead.get(piece.label() + " lead 1");
            String right = jointOfLead.get(piece.label() + " lead 2");
            assertEquals(piece.left(), left);
            assertEquals(piece.right(), right);
            nodes.resistor(left, right, piece.ohms());
        }
        assertEquals(network.ohms(), nodes.ohms("A", "B"), SOLVED_RATIO * network.ohms());
    }

    /** The drawing and the list call the same joint by the same name. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theDrawingHasTheSameNames(int seed) {
        Network network = DrawnNetworks.next(new Random(seed), 1 + seed % 30);
        NetworkDrawing drawing = NetworkDrawing.of(network);
        Nodes<NetworkDrawing.Place> nodes = new Nodes<>();
        drawing.wires().forEach(wire -> nodes.join(wire.start(), wire.end()));
        Map<NetworkDrawing.Place, String> names = new HashMap<>();
        drawing.joints().forEach(joint -> names.put(nodes.root(joint.place()), joint.name()));
        List<Piece> pieces = WiringList.of(network, Use.of(1)).pieces();
        drawing.bodies().forEach(body -> {
            assertEquals(pieces.get(body.index()).left(), names.get(nodes.root(body.left())));
            assertEquals(pieces.get(body.index()).right(), names.get(nodes.root(body.right())));
        });
    }

    @Test
    void saysWhatTheMeterShowsAndWhatFlows() {
        // Two 8 ohm side by side, 2 % each, before 1 ohm, 2 %: 5 ohm, 4.9 to 5.1; 125 W are 5 A, halved before the
        // joint C.
        Network eight = Network.of(Resistor.of("8R", 8, 0.02));
        Network network = Network.series(
                List.of(Network.parallel(List.of(eight, eight)), Network.of(Resistor.of("1R", 1, 0.02))));
        WiringList list = WiringList.of(network, Use.of(125));
        assertEquals(5, list.ohms(), SOLVED_RATIO);
        assertEquals(4.9, list.lowOhms(), SOLVED_RATIO);
        assertEquals(5.1, list.highOhms(), SOLVED_RATIO);
        assertEquals(2.5, list.pieces().get(0).ampsRms().orElseThrow(), SOLVED_RATIO);
        assertEquals(50, list.pieces().get(1).powerWatts().orElseThrow(), SOLVED_RATIO);
        assertEquals(25, list.pieces().get(2).powerWatts().orElseThrow(), SOLVED_RATIO);
        assertEquals(
                List.of("A", "B", "C"), list.joints().stream().map(Joint::name).toList());
        assertEquals(
                List.of("8R no. 1 lead 2", "8R no. 2 lead 2", "1R lead 1"),
                list.joints().get(2).leads());
        list.joints().forEach(joint -> assertEquals(5, joint.ampsRms().orElseThrow(), SOLVED_RATIO));
        String text = list.text();
        assertTrue(text.contains("Joint C: join 8R no. 1 lead 2, 8R no. 2 lead 2 and 1R lead 1 (carries 5 A)."), text);
        assertTrue(text.contains("Expect 5 \u03a9; if it is not between 4.9 \u03a9 and 5.1 \u03a9"), text);
        // IEC 60028: 2 m of 1.5 mm2 are 2 / (58 * 1.5) = 23 mohm, 0.46 % of 5 ohm; 1 mm2 would be 0.69 %.
        assertTrue(text.contains("Copper of 1.5 mm\u00b2 adds 22.99 m\u03a9"), text);
    }

    @Test
    void warnsOfHeatFireAirAndLiveTerminals() {
        Network network = DrawnNetworks.read("8R2");
        String one = WiringList.of(network, Use.of(10)).text();
        for (String word : new String[] {"Burns", "Fire", "Ventilation", "cool before you touch", "qualified person"}) {
            assertTrue(one.contains(word), word);
        }
        String bridged = WiringList.of(network, Use.of(10).withBridged(true)).text();
        assertTrue(bridged.contains("Neither terminal is ground."), bridged);
        assertFalse(one.contains("Overload"), one);
    }

    @Test
    void namesThePieceThatWouldBeOverloaded() {
        Resistor weak = new Resistor("weak", 1, 0.05, Optional.of(new PowerRating(10, 25, 225)), PartTraits.NONE);
        Resistor strong = new Resistor("strong", 3, 0.05, Optional.of(new PowerRating(200, 25, 225)), PartTraits.NONE);
        Network network = Network.series(List.of(Network.of(weak), Network.of(strong)));
        // A quarter of 100 W against 10 W; the limit of the whole is 40 W.
        String text = WiringList.of(network, Use.of(100)).text();
        assertTrue(text.contains("Overload: weak would take 25 W but may take only 10 W"), text);
        assertTrue(text.contains("Keep the power below 40 W"), text);
        assertFalse(text.contains("Overload: strong"), text);
        // 20 K/W by the line of weak: 25 W would bring it 500 K above the air.
        assertTrue(text.contains("may reach 525 \u00b0C"), text);
    }

    @Test
    void doesWithoutAPower() {
        String text = WiringList.of(DrawnNetworks.read("8R2+8R2"), new Use(OptionalDouble.empty(), 20, false))
                .text();
        assertTrue(text.contains("Joint C: join 8R2 no. 1 lead 2 and 8R2 no. 2 lead 1."), text);
        assertFalse(text.contains("carries"), text);
    }
}
