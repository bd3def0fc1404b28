// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** The tests that the records of signals share. */
final class Checks {
    static final double HIGHEST_HZ = 192_000;
    static final double LOWEST_HZ = 0.1;

    private Checks() {}

    static void within(String name, double value, double lowest, double highest) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(name + " must be " + lowest + " to " + highest + ", but is " + value);
        }
    }

    static void frequency(String name, double hertz) {
        within(name, hertz, LOWEST_HZ, HIGHEST_HZ);
    }

    static void common(double levelDbfs, double durationSeconds) {
        within("levelDbfs", levelDbfs, TestSignal.LOWEST_DBFS, 0);
        within("durationSeconds", durationSeconds, 1e-3, TestSignal.LONGEST_SECONDS);
    }

    static void span(double fromHz, double toHz) {
        frequency("fromHz", fromHz);
        frequency("toHz", toHz);
        if (Math.abs(Math.log(toHz / fromHz)) < 1e-6) {
            throw new IllegalArgumentException("the two frequencies must differ, but both are " + fromHz);
        }
    }

    static double lower(double levelDbfs, double db) {
        if (!(db >= 0)) {
            throw new IllegalArgumentException("db must be 0 or above, but is " + db);
        }
        return levelDbfs - db;
    }
}
