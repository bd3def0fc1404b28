// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Point2D;
import java.util.List;
import org.junit.jupiter.api.Test;

class ClippingTest {
    private static final double FAR = Stage.FAR;

    @Test
    void lineThroughTheSquareCrossesItTwiceOnItsOwnCourse() {
        // y = 100 + x / 2, from far left to far right: it leaves through the sides at x = -FAR and x = FAR.
        List<Point2D> found = Clipping.crossings(-10 * FAR, 100 - 5 * FAR, 10 * FAR, 100 + 5 * FAR);
        assertEquals(2, found.size());
        assertEquals(0, found.get(0).distance(-FAR, 100 - FAR / 2), 1e-6);
        assertEquals(0, found.get(1).distance(FAR, 100 + FAR / 2), 1e-6);
    }

    @Test
    void lineFromInsideCrossesOnce() {
        List<Point2D> found = Clipping.crossings(0, 0, 0, -4 * FAR);
        assertEquals(1, found.size());
        assertEquals(0, found.get(0).distance(0, -FAR), 1e-6);
    }

    @Test
    void lineThatMissesOrHasNoPlaceCrossesNowhere() {
        assertTrue(Clipping.crossings(2 * FAR, 0, 3 * FAR, 0).isEmpty());
        assertTrue(Clipping.crossings(2 * FAR, 0, 2 * FAR, 100).isEmpty());
        assertTrue(Clipping.crossings(0, 0, 1, Double.POSITIVE_INFINITY).isEmpty());
        assertFalse(Clipping.isFar(FAR, -FAR));
    }
}
