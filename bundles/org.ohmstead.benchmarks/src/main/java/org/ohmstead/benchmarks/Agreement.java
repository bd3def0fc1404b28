// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.util.Locale;
import java.util.Map;

/** Compares the figures of ours and of the reference: times of different work are not worth comparing. */
public final class Agreement {
    private final Map<String, Double> ours;
    private final Map<String, Double> reference;

    /** Makes a comparison. */
    public Agreement(Map<String, Double> ours, Map<String, Double> reference) {
        this.ours = ours;
        this.reference = reference;
    }

    /**
     * Compares the figures of a name by their ratio.
     *
     * @param name what both call it
     * @param share by what share of the reference's they may differ
     */
    public void within(String name, double share) throws IOException {
        double expected = figure(reference, name, "the reference");
        compare(name, expected, share * Math.abs(expected));
    }

    /**
     * Compares the figures of a name by their difference.
     *
     * @param name what both call it
     * @param difference by how much they may differ
     */
    public void near(String name, double difference) throws IOException {
        compare(name, figure(reference, name, "the reference"), difference);
    }

    private void compare(String name, double expected, double difference) throws IOException {
        double found = figure(ours, name, "ours");
        if (!(Math.abs(found - expected) <= difference)) {
            throw new IOException(String.format(
                    Locale.ROOT,
                    "The two do not agree: %s is %.12g here and %.12g in the reference; %.3g apart, where %.3g is"
                            + " allowed.",
                    name,
                    found,
                    expected,
                    Math.abs(found - expected),
                    difference));
        }
    }

    private static double figure(Map<String, Double> figures, String name, String whose) throws IOException {
        Double figure = figures.get(name);
        if (figure == null) {
            throw new IOException("There is no figure " + name + " of " + whose + ".");
        }
        return figure;
    }
}
