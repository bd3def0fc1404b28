// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.units.text.Messages;

/** Where a figure is going: the straight line through its latest values, if it stands out of their scatter. */
enum Trend {
    /** Not enough is known. */
    UNKNOWN(""),
    /** It rises. */
    RISING("\u25b2"),
    /** It falls. */
    FALLING("\u25bc"),
    /** It neither rises nor falls by more than it scatters. */
    STEADY("\u25ba");

    private static final Messages TEXTS = Messages.of(Trend.class);

    private static final int LEAST = 4;
    /** A change over the whole time that is smaller than this share of the value is none that a person cares for. */
    private static final double LEAST_SHARE = 0.003;

    private final String arrow;

    Trend(String arrow) {
        this.arrow = arrow;
    }

    /** Returns the sign for it; empty when nothing is known. */
    String arrow() {
        return arrow;
    }

    /** Returns the word for it; empty when nothing is known. */
    String words() {
        return this == UNKNOWN ? "" : TEXTS.text("trend." + name());
    }

    /**
     * A value at a time.
     *
     * @param seconds when
     * @param value what
     */
    record Sample(double seconds, double value) {}

    /**
     * Judges the latest values.
     *
     * @param samples in the order of time
     */
    static Trend of(List<Sample> samples) {
        if (samples.size() < LEAST) {
            return UNKNOWN;
        }
        double meanTime =
                samples.stream().mapToDouble(Sample::seconds).average().orElseThrow();
        double mean = samples.stream().mapToDouble(Sample::value).average().orElseThrow();
        double times = 0;
        double both = 0;
        for (Sample each : samples) {
            times += (each.seconds() - meanTime) * (each.seconds() - meanTime);
            both += (each.seconds() - meanTime) * (each.value() - mean);
        }
        if (times == 0) {
            return UNKNOWN;
        }
        double slope = both / times;
        double rest = 0;
        for (Sample each : samples) {
            double off = each.value() - mean - slope * (each.seconds() - meanTime);
            rest += off * off;
        }
        double scatter = Math.sqrt(rest / (samples.size() - 2));
        double span = samples.get(samples.size() - 1).seconds() - samples.get(0).seconds();
        double change = slope * span;
        if (Math.abs(change) <= Math.max(2 * scatter, LEAST_SHARE * Math.abs(mean))) {
            return STEADY;
        }
        return change > 0 ? RISING : FALLING;
    }

    /** Returns the last of some samples, at most so many. */
    static List<Sample> last(List<Sample> samples, int most) {
        return new ArrayList<>(samples.subList(Math.max(0, samples.size() - most), samples.size()));
    }
}
