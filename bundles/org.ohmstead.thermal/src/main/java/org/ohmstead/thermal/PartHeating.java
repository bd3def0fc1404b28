// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.PartShare;

/**
 * What a drive makes of one resistor of a branch.
 *
 * @param share the resistor and its share
 * @param drive the power that falls on it
 * @param allowedWatts what it may take for ever; empty for a mere resistance
 * @param places its temperatures; empty for a mere resistance
 * @param pulse what its maker's short overload says; empty when none is known, or when it may take nothing at all
 * @param notes what the figures rest on besides what was entered, to be shown beside them
 */
public record PartHeating(
        PartShare share,
        LoadSideDrive drive,
        OptionalDouble allowedWatts,
        List<PlaceHeat> places,
        Optional<PartHeatingPulse> pulse,
        List<String> notes) {
    public PartHeating {
        Checks.present(share, "share");
        Checks.present(drive, "drive");
        Checks.present(allowedWatts, "allowedWatts").ifPresent(value -> Checks.notNegative(value, "allowedWatts"));
        places = List.copyOf(places);
        Checks.present(pulse, "pulse");
        notes = List.copyOf(notes);
    }

    /**
     * The temperatures of one place.
     *
     * @param where the place, its limit and its chain
     * @param averageCelsius where the mean power brings it in the end
     * @param peakCelsius at the end of each burst, once they have gone on for long; for a steady drive {@code
     *     averageCelsius}
     */
    public record PlaceHeat(PartHeatingPoint where, double averageCelsius, double peakCelsius) {
        public PlaceHeat {
            Checks.present(where, "where");
            Checks.finite(averageCelsius, "averageCelsius");
            Checks.finite(peakCelsius, "peakCelsius");
        }

        /** Returns whether it stays at or below its limit for ever. */
        public boolean holds() {
            OptionalDouble limit = where.point().limitCelsius();
            return limit.isEmpty() || peakCelsius <= limit.getAsDouble() + 1e-9 * Math.abs(limit.getAsDouble());
        }
    }

    /** Returns one of its places; empty when it is not known. */
    public Optional<PlaceHeat> place(PartHeatingPoint.Place place) {
        return places.stream().filter(heat -> heat.where().place() == place).findFirst();
    }

    /**
     * Returns the mean power that it may take over the one it gets: 1 at its limit; empty for a mere resistance or
     * without power.
     */
    public OptionalDouble headroomRatio() {
        return allowedWatts.isEmpty() || drive.averageWatts() <= 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(allowedWatts.getAsDouble() / drive.averageWatts());
    }

    /**
     * Returns whether the drive may go on for ever, as far as is known: places below their limits and, where known,
     * the short overload.
     */
    public boolean holds() {
        return places.stream().allMatch(PlaceHeat::holds)
                && pulse.map(PartHeatingPulse::holds).orElse(true);
    }
}
