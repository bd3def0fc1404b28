// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;

/** What an output stage is made to put out into its load, as RMS volts at the load. */
public sealed interface Drive {
    /** The square of the crest factor of a sine. */
    double SINE_CREST_POWER = 2;

    /** Returns the stretches of which the drive consists, each steady; one of a second when it is steady itself. */
    List<Stretch> stretches();

    /**
     * A steady sine. Above what the rails can reach it is a sine clipped at the rails.
     *
     * @param outputVoltsRms at least 0
     */
    record Sine(double outputVoltsRms) implements Steady {
        public Sine {
            Checks.notNegative(outputVoltsRms, "outputVoltsRms");
        }
    }

    /**
     * Programme whose amplitudes are normally distributed, as those of much music and of noise are nearly. It holds while clipping is rare:
     * rails at least 9 dB above the RMS.
     *
     * @param outputVoltsRms its standard deviation, at least 0
     */
    record Programme(double outputVoltsRms) implements Steady {
        public Programme {
            Checks.notNegative(outputVoltsRms, "outputVoltsRms");
        }

        /**
         * Returns the programme whose RMS lies a crest factor below a peak.
         *
         * @param peakVolts what its peaks just reach, at least 0
         * @param crestDb peak over RMS in decibels
         */
        public static Programme ofCrest(double peakVolts, double crestDb) {
            return new Programme(
                    Checks.notNegative(peakVolts, "peakVolts") / Math.pow(10, Checks.finite(crestDb, "crestDb") / 20));
        }
    }

    /**
     * A loud and a quiet sine in turn.
     *
     * @param loudVoltsRms at least 0
     * @param loudSeconds how long it is loud, above 0
     * @param quietVoltsRms at least 0
     * @param quietSeconds how long it is quiet, at least 0
     */
    record Burst(double loudVoltsRms, double loudSeconds, double quietVoltsRms, double quietSeconds) implements Drive {
        public Burst {
            Checks.notNegative(loudVoltsRms, "loudVoltsRms");
            Checks.positive(loudSeconds, "loudSeconds");
            Checks.notNegative(quietVoltsRms, "quietVoltsRms");
            Checks.notNegative(quietSeconds, "quietSeconds");
        }

        @Override
        public List<Stretch> stretches() {
            return List.of(
                    new Stretch(new Sine(loudVoltsRms), loudSeconds),
                    new Stretch(new Sine(quietVoltsRms), quietSeconds));
        }
    }

    /** A drive that stays the same. */
    sealed interface Steady extends Drive permits Sine, Programme {
        /** Returns the RMS volts at the load. */
        double outputVoltsRms();

        @Override
        default List<Stretch> stretches() {
            return List.of(new Stretch(this, 1));
        }
    }

    /**
     * A steady part of a drive.
     *
     * @param drive what it is
     * @param seconds how long it lasts each time
     */
    record Stretch(Steady drive, double seconds) {}

    /** Returns the power of a crest factor over that of a sine with the same peak: 2 / 10^(crest/10). */
    static double powerRatioOfCrest(double crestDb) {
        return SINE_CREST_POWER / Math.pow(10, Checks.finite(crestDb, "crestDb") / 10);
    }
}
