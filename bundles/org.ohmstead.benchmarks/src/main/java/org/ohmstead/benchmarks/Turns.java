// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.util.Locale;

/** Has ours and the reference measured in turns, so that what disturbs the machine for a while disturbs both. */
public final class Turns {
    private final Times ours = new Times();
    private final Times reference = new Times();

    private Turns() {}

    /**
     * Takes turns. The reference has warmed up by finding its figures; ours warms up in each turn, see {@link Jmh}.
     *
     * @param room says how many turns
     * @param jmh measures ours
     * @param script does the reference's work
     * @param times how often the reference does it in each turn
     */
    public static Turns of(Room room, Jmh jmh, Reference script, int times) throws IOException {
        return of(room, jmh, script, times, 1);
    }

    /**
     * As above, for a reference whose work holds ours several times over.
     *
     * @param piece how many times
     */
    public static Turns of(Room room, Jmh jmh, Reference script, int times, int piece) throws IOException {
        Turns turns = new Turns();
        for (int round = 0; round < room.rounds(); round++) {
            turns.ours.add(jmh.run());
            for (double seconds : script.seconds(times)) {
                turns.reference.add(seconds / piece);
            }
        }
        return turns;
    }

    /** Returns a line of the table with the median times. */
    public Outcome outcome(String name, String about, Goal goal) {
        String best = String.format(
                Locale.ROOT,
                "best %.4g s and %.4g s; median of %d and %d",
                ours.best(),
                reference.best(),
                ours.count(),
                reference.count());
        return Outcome.seconds(name, about, ours.median(), reference.median(), goal, best);
    }
}
