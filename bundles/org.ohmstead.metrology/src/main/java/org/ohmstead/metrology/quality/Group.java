// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import org.ohmstead.metrology.internal.Checks;

/**
 * The sums of one group of readings.
 *
 * @param count the number of readings, at least 1
 * @param mean their mean
 * @param squares the sum of their squared distances from it
 */
record Group(int count, double mean, double squares) {

    /** Returns the sums of at least one finite reading. */
    static Group of(double... readings) {
        if (readings.length == 0) {
            throw new IllegalArgumentException("A group has no readings but needs at least one.");
        }
        double sum = 0;
        for (double reading : readings) {
            sum += Checks.finite("reading", reading);
        }
        double mean = sum / readings.length;
        // Second pass: removes the rounding error of the long sum.
        double correction = 0;
        for (double reading : readings) {
            correction += reading - mean;
        }
        mean += correction / readings.length;
        double squares = 0;
        for (double reading : readings) {
            squares += (reading - mean) * (reading - mean);
        }
        return new Group(readings.length, mean, squares);
    }

    /** Returns count - 1. */
    int freedom() {
        return count - 1;
    }
}
