// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.OptionalInt;

/** What is fed into the amplifier. Levels are in dB relative to the source's full output; see {@link Bench#feed} on coarse levels. */
public sealed interface Feed {
    /** Nothing: the inputs are connected and silent. */
    record Silence() implements Feed {}

    /**
     * A steady sine.
     *
     * @param frequencyHz in hertz, above 0
     * @param driveDb at most 0
     * @param channel the only channel that is fed, from 0; empty for all
     */
    record Tone(double frequencyHz, double driveDb, OptionalInt channel) implements Feed {
        public Tone {
            Checks.positive(frequencyHz, "frequencyHz");
            Checks.within(driveDb, LOWEST_DB, 0, "driveDb");
            Checks.present(channel, "channel");
        }

        /** Returns a tone into all channels. */
        public static Tone of(double frequencyHz, double driveDb) {
            return new Tone(frequencyHz, driveDb, OptionalInt.empty());
        }
    }

    /**
     * Tone bursts into all channels.
     *
     * @param frequencyHz in hertz, above 0
     * @param driveDb of the loud part, at most 0
     * @param onSeconds length of the loud part, above 0
     * @param periodSeconds from one to the next, above {@code onSeconds}
     * @param lowLevelDb level between them relative to the loud part, at most 0
     */
    record Burst(double frequencyHz, double driveDb, double onSeconds, double periodSeconds, double lowLevelDb)
            implements Feed {
        public Burst {
            Checks.positive(frequencyHz, "frequencyHz");
            Checks.within(driveDb, LOWEST_DB, 0, "driveDb");
            Checks.positive(onSeconds, "onSeconds");
            Checks.finite(periodSeconds, "periodSeconds");
            if (periodSeconds <= onSeconds) {
                throw new IllegalArgumentException(
                        "periodSeconds is " + periodSeconds + "; it must be above onSeconds, which is " + onSeconds);
            }
            Checks.within(lowLevelDb, LOWEST_DB, 0, "lowLevelDb");
        }
    }

    /** The lowest level that can be asked for, in dB. */
    double LOWEST_DB = -200;
}
