// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/**
 * A level with its uncertainty.
 *
 * @param valueDb in dB re 20 micropascals
 * @param standardUncertaintyDb k = 1, in dB, 0 or above
 */
public record Level(double valueDb, double standardUncertaintyDb) {
    public Level {
        Checks.finite("valueDb", valueDb);
        Checks.notNegative("standardUncertaintyDb", standardUncertaintyDb);
    }

    /** Returns a level of which no uncertainty is to be counted. */
    public static Level exact(double valueDb) {
        return new Level(valueDb, 0);
    }

    /** Returns the expanded uncertainty in dB, k = 2. */
    public double expandedUncertaintyDb() {
        return 2 * standardUncertaintyDb;
    }
}
