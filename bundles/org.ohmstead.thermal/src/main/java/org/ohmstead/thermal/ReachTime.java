// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/** When a temperature is reached while the powers do not change. */
public sealed interface ReachTime {
    /**
     * It is reached.
     *
     * @param seconds how long it takes, in seconds; 0 when it is there already
     */
    record At(double seconds) implements ReachTime {
        public At {
            Checks.notNegative(seconds, "seconds");
        }
    }

    /**
     * It is never reached, however long one waits.
     *
     * @param settledKelvin the rise above the air that is left in the end, in kelvins
     */
    record Never(double settledKelvin) implements ReachTime {
        public Never {
            Checks.finite(settledKelvin, "settledKelvin");
        }
    }
}
