// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Arrays;

/** A stretch of time in which no power changes. Immutable. */
public final class PowerStep {
    private final double seconds;
    private final double[] watts;

    /**
     * Makes a step.
     *
     * @param seconds how long it lasts, at least 0
     * @param watts power of each source in watts, in the order of {@link HeatModel#sources}
     */
    public PowerStep(double seconds, double... watts) {
        this.seconds = Checks.notNegative(seconds, "seconds");
        this.watts = watts.clone();
        for (double power : this.watts) {
            Checks.finite(power, "watts");
        }
    }

    /** Returns how long it lasts, in seconds. */
    public double seconds() {
        return seconds;
    }

    /** Returns the power of each source in watts. */
    public double[] watts() {
        return watts.clone();
    }

    /** Returns the powers themselves; not to be changed. */
    double[] shared() {
        return watts;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PowerStep step
                && Double.compare(seconds, step.seconds) == 0
                && Arrays.equals(watts, step.watts);
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(seconds) + Arrays.hashCode(watts);
    }

    @Override
    public String toString() {
        return "PowerStep[seconds=" + seconds + ", watts=" + Arrays.toString(watts) + "]";
    }
}
