// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.signal.gain.GainSetup;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.units.text.Messages;

class LevelLadderTest {
    private static final Messages ENGLISH = Messages.of(LevelLadder.class, Locale.ENGLISH);
    private static final GainSetup SETUP = GainSetup.withOverlap(5, 10, new GainTarget(100, 4, false));

    private static LevelLadder ladder(GainSetup setup) {
        return LevelLadder.of(setup, setup.checkAt(-20), ENGLISH);
    }

    private static List<LevelLadder.Kind> kinds(LevelLadder ladder) {
        return ladder.rungs().stream().map(LevelLadder.Rung::kind).toList();
    }

    @Test
    void theRungsStandFromFullScaleDownToTheCheck() {
        LevelLadder ladder = ladder(SETUP);
        assertEquals(
                List.of(LevelLadder.Kind.FULL_SCALE, LevelLadder.Kind.END_POINT, LevelLadder.Kind.CHECK),
                kinds(ladder));
        assertEquals(
                "Full scale: 5.00 V, 0.0 dBFS \u2192 63.2 V, 1000 W\n"
                        + "End point, clipping: 1.58 V, -10.0 dBFS \u2192 20.0 V, 100 W\n"
                        + "Set the gain here: 0.158 V, -30.0 dBFS \u2192 2.00 V, 1.00 W",
                ladder.words());
        assertTrue(ladder.clips());
        // 12 and 18 dB below a full scale that lies 10 dB above the end point.
        assertEquals(-2, ladder.musicHighDb(), 1e-9);
        assertEquals(-8, ladder.musicLowDb(), 1e-9);
    }

    @Test
    void clippingHasARungOfItsOwnWhereItIsNotTheEndPoint() {
        LevelLadder ladder = ladder(SETUP.withClipWatts(OptionalDouble.of(200)));
        assertEquals(
                List.of(
                        LevelLadder.Kind.FULL_SCALE,
                        LevelLadder.Kind.CLIP,
                        LevelLadder.Kind.END_POINT,
                        LevelLadder.Kind.CHECK),
                kinds(ladder));
        assertEquals(3.0103, ladder.clipDb(), 5e-5);
        assertFalse(ladder(SETUP.withClipWatts(OptionalDouble.of(2000))).clips());
        assertEquals(
                LevelLadder.Kind.END_POINT,
                ladder(GainSetup.withOverlap(5, -3, SETUP.target()))
                        .rungs()
                        .get(0)
                        .kind());
    }

    @Test
    void allOfItLiesWithinTheDrawing() {
        for (double overlapDb : new double[] {-40, -3, 0, 10, 40}) {
            LevelLadder ladder = ladder(GainSetup.withOverlap(5, overlapDb, SETUP.target()));
            for (LevelLadder.Rung rung : ladder.rungs()) {
                double depth = ladder.depth(rung.levelDb());
                assertTrue(depth > 0 && depth < 1, overlapDb + " dB: " + rung);
            }
            assertTrue(ladder.depth(ladder.musicLowDb()) < 1);
            assertEquals(0, ladder.depth(ladder.topDb()), 1e-12);
            assertEquals(1, ladder.depth(ladder.bottomDb()), 1e-12);
        }
    }

    @Test
    void labelsAreMovedApartAndStayWithin() {
        assertArrayEquals(new int[] {10, 40, 90}, LabelPlaces.spread(new int[] {10, 40, 90}, 20, 0, 100));
        assertArrayEquals(new int[] {10, 30, 50}, LabelPlaces.spread(new int[] {10, 12, 14}, 20, 0, 100));
        assertArrayEquals(new int[] {60, 80, 100}, LabelPlaces.spread(new int[] {95, 98, 99}, 20, 0, 100));
        assertArrayEquals(new int[] {5, 50}, LabelPlaces.spread(new int[] {-10, 50}, 20, 5, 100));
        assertArrayEquals(new int[0], LabelPlaces.spread(new int[0], 20, 0, 100));
    }
}
