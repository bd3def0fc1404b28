// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.Optional;

/**
 * What the view remembers from one session to the next.
 *
 * @param fullScaleVoltsRms of the source, above 0
 * @param overlapDb the gain overlap, -60 to 60
 */
public record Kept(double fullScaleVoltsRms, double overlapDb) {
    private static final double WIDEST_DB = 60;

    public Kept {
        if (!valid(fullScaleVoltsRms, overlapDb)) {
            throw new IllegalArgumentException("fullScaleVoltsRms is " + fullScaleVoltsRms + " and overlapDb is "
                    + overlapDb + "; they must be above 0 and between -60 and 60");
        }
    }

    private static boolean valid(double volts, double overlapDb) {
        return volts > 0 && Double.isFinite(volts) && Math.abs(overlapDb) <= WIDEST_DB;
    }

    /** Returns it as text. */
    public String text() {
        return fullScaleVoltsRms + " " + overlapDb;
    }

    /** Reads the text; empty when it is null or not such a text. */
    public static Optional<Kept> of(String text) {
        String[] parts = text == null ? new String[0] : text.split(" ");
        if (parts.length != 2) {
            return Optional.empty();
        }
        try {
            double volts = Double.parseDouble(parts[0]);
            double overlapDb = Double.parseDouble(parts[1]);
            return valid(volts, overlapDb) ? Optional.of(new Kept(volts, overlapDb)) : Optional.empty();
        } catch (NumberFormatException notOurs) {
            // The layout file was changed by hand: begin with the usual values.
            return Optional.empty();
        }
    }
}
