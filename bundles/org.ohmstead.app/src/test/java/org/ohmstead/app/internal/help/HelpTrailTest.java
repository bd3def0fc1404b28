// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HelpTrailTest {
    private final HelpTrail trail = new HelpTrail();

    @Test
    void goesBackAndForward() {
        assertEquals(Optional.empty(), trail.go(-1));
        trail.add(stop("a", false));
        trail.add(stop("b", false));

        assertEquals(Optional.of(stop("a", false)), trail.go(-1));
        assertFalse(trail.canGoBack());
        assertEquals(Optional.of(stop("b", false)), trail.go(1));
        assertEquals(Optional.of(stop("b", false)), trail.go(1));
    }

    @Test
    void forgetsWhatLayAheadAtANewTurn() {
        trail.add(stop("a", false));
        trail.add(stop("b", false));
        trail.go(-1);
        trail.add(stop("c", false));

        assertFalse(trail.canGoForward());
        assertEquals(Optional.of(stop("a", false)), trail.go(-1));
    }

    @Test
    void keepsOneListOfFindsWhileTheUserTypes() {
        trail.add(stop("a", false));
        trail.add(stop("f", true));
        trail.add(stop("fu", true));

        assertEquals(Optional.of(stop("fu", true)), trail.current());
        assertEquals(Optional.of(stop("a", false)), trail.go(-1));
        assertFalse(trail.canGoBack());
    }

    @Test
    void forgetsTheOldestOfManyStops() {
        for (int i = 0; i < 250; i++) {
            trail.add(stop("p" + i, false));
        }
        int count = 1;
        while (trail.canGoBack()) {
            trail.go(-1);
            count++;
        }
        assertEquals(100, count);
        assertTrue(trail.canGoForward());
    }

    private static HelpTrail.Stop stop(String name, boolean list) {
        return new HelpTrail.Stop(new HelpPage(name, name, List.of()), "", list);
    }
}
