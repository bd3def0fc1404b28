// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** What is fed into the amplifier. */
public sealed interface Stimulus {
    /** Returns the tone's frequency in hertz. */
    double frequencyHz();

    /** Returns the kind of power that this stimulus shows. */
    PowerKind powerKind();

    /** Returns this stimulus with another frequency of the tone in hertz, above 0. */
    Stimulus withFrequencyHz(double newFrequencyHz);

    /**
     * A steady sine.
     *
     * @param frequencyHz in hertz, above 0
     */
    record ContinuousSine(double frequencyHz) implements Stimulus {
        public ContinuousSine {
            Checks.positive(frequencyHz, "frequencyHz");
        }

        @Override
        public PowerKind powerKind() {
            return PowerKind.CONTINUOUS;
        }

        @Override
        public ContinuousSine withFrequencyHz(double newFrequencyHz) {
            return new ContinuousSine(newFrequencyHz);
        }
    }

    /**
     * A sine that is loud for a short while in every period.
     *
     * @param frequencyHz in hertz, above 0
     * @param onSeconds length of the loud part in seconds, above 0
     * @param periodSeconds from one loud part to the next in seconds, above {@code onSeconds}
     * @param lowLevelDb level between the bursts relative to the loud part in dB, at most 0; negative infinity is not allowed, use
     *     -200 for silence
     */
    record ToneBurst(double frequencyHz, double onSeconds, double periodSeconds, double lowLevelDb)
            implements Stimulus {
        public ToneBurst {
            Checks.positive(frequencyHz, "frequencyHz");
            Checks.positive(onSeconds, "onSeconds");
            Checks.positive(periodSeconds, "periodSeconds");
            if (periodSeconds <= onSeconds) {
                throw new IllegalArgumentException(
                        "periodSeconds is " + periodSeconds + "; it must be above onSeconds, which is " + onSeconds);
            }
            Checks.within(lowLevelDb, -200, 0, "lowLevelDb");
        }

        @Override
        public PowerKind powerKind() {
            return PowerKind.BURST;
        }

        @Override
        public ToneBurst withFrequencyHz(double newFrequencyHz) {
            return new ToneBurst(newFrequencyHz, onSeconds, periodSeconds, lowLevelDb);
        }

        /** Returns this burst with another length of the loud part in seconds. */
        public ToneBurst withOnSeconds(double newOnSeconds) {
            return new ToneBurst(frequencyHz, newOnSeconds, periodSeconds, lowLevelDb);
        }

        /** Returns this burst with another period in seconds. */
        public ToneBurst withPeriodSeconds(double newPeriodSeconds) {
            return new ToneBurst(frequencyHz, onSeconds, newPeriodSeconds, lowLevelDb);
        }

        /** Returns this burst with another level between the bursts in dB. */
        public ToneBurst withLowLevelDb(double newLowLevelDb) {
            return new ToneBurst(frequencyHz, onSeconds, periodSeconds, newLowLevelDb);
        }
    }
}
