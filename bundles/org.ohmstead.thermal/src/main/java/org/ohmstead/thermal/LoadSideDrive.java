// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.model.Stimulus;

/** The power that a branch of a load gets. */
public sealed interface LoadSideDrive {
    /** Returns the mean power in watts. */
    double averageWatts();

    /** Returns the highest power in watts that lasts, that of a sine's whole cycles. */
    double peakWatts();

    /** Returns this drive with all powers multiplied, as for a part with a share of them; at least 0. */
    LoadSideDrive times(double ratio);

    /** Returns the drive of a stimulus with a power in the branch in watts, during the burst where it is one. */
    static LoadSideDrive of(Stimulus stimulus, double watts) {
        Checks.present(stimulus, "stimulus");
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            double between = watts * Math.pow(10, burst.lowLevelDb() / 10);
            return new Bursts(watts, between, burst.onSeconds(), burst.periodSeconds());
        }
        return new Steady(watts);
    }

    /**
     * The same power all the time.
     *
     * @param watts at least 0
     */
    record Steady(double watts) implements LoadSideDrive {
        public Steady {
            Checks.notNegative(watts, "watts");
        }

        @Override
        public double averageWatts() {
            return watts;
        }

        @Override
        public double peakWatts() {
            return watts;
        }

        @Override
        public Steady times(double ratio) {
            return new Steady(watts * Checks.notNegative(ratio, "ratio"));
        }
    }

    /**
     * Bursts that come again and again.
     *
     * @param onWatts during a burst, at least 0
     * @param betweenWatts between the bursts, 0 to {@code onWatts}
     * @param onSeconds length of a burst, above 0
     * @param periodSeconds from one burst to the next, above {@code onSeconds}
     */
    record Bursts(double onWatts, double betweenWatts, double onSeconds, double periodSeconds)
            implements LoadSideDrive {
        public Bursts {
            Checks.notNegative(onWatts, "onWatts");
            Checks.within(betweenWatts, 0, onWatts, "betweenWatts");
            SupplyCurrent.dutyRatio(onSeconds, periodSeconds);
        }

        @Override
        public double averageWatts() {
            double duty = onSeconds / periodSeconds;
            return duty * onWatts + (1 - duty) * betweenWatts;
        }

        @Override
        public double peakWatts() {
            return onWatts;
        }

        @Override
        public Bursts times(double ratio) {
            Checks.notNegative(ratio, "ratio");
            return new Bursts(onWatts * ratio, betweenWatts * ratio, onSeconds, periodSeconds);
        }
    }
}
