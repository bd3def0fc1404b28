// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Severity;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;

/** A row of the tables under test. */
record Claim(
        String name,
        Mode mode,
        double loadOhms,
        double powerWatts,
        double distortionRatio,
        OptionalDouble gainDb,
        Optional<LocalDate> statedOn,
        boolean confirmed) {
    Claim {
        if (name.isBlank()) {
            throw new IllegalArgumentException("name is blank; it needs a text");
        }
        if (!(loadOhms > 0)) {
            throw new IllegalArgumentException("loadOhms is " + loadOhms + "; it must be a finite number above 0");
        }
    }

    static Claim of(String name, double loadOhms, double powerWatts) {
        return new Claim(
                name, Mode.STEREO, loadOhms, powerWatts, 0.01, OptionalDouble.empty(), Optional.empty(), false);
    }

    Claim withName(String newName) {
        return new Claim(newName, mode, loadOhms, powerWatts, distortionRatio, gainDb, statedOn, confirmed);
    }

    Claim withMode(Mode newMode) {
        return new Claim(name, newMode, loadOhms, powerWatts, distortionRatio, gainDb, statedOn, confirmed);
    }

    Claim withLoadOhms(double newLoadOhms) {
        return new Claim(name, mode, newLoadOhms, powerWatts, distortionRatio, gainDb, statedOn, confirmed);
    }

    Claim withPowerWatts(double newPowerWatts) {
        return new Claim(name, mode, loadOhms, newPowerWatts, distortionRatio, gainDb, statedOn, confirmed);
    }

    Claim withDistortionRatio(double newRatio) {
        return new Claim(name, mode, loadOhms, powerWatts, newRatio, gainDb, statedOn, confirmed);
    }

    Claim withGainDb(OptionalDouble newGainDb) {
        return new Claim(name, mode, loadOhms, powerWatts, distortionRatio, newGainDb, statedOn, confirmed);
    }

    Claim withStatedOn(Optional<LocalDate> newStatedOn) {
        return new Claim(name, mode, loadOhms, powerWatts, distortionRatio, gainDb, newStatedOn, confirmed);
    }

    Claim withConfirmed(boolean newConfirmed) {
        return new Claim(name, mode, loadOhms, powerWatts, distortionRatio, gainDb, statedOn, newConfirmed);
    }

    double amps() {
        return Math.sqrt(powerWatts / loadOhms);
    }

    static TableSpec<Claim> spec() {
        return TableSpec.of("claims", "rating", "ratings", columns())
                .withKey(Claim::name)
                .withNewRow(rows -> Claim.of(freshName("New", rows), 4, 50))
                .withDuplicate((row, rows) -> row.withName(freshName(row.name(), rows)));
    }

    static String freshName(String start, List<Claim> rows) {
        List<String> names = new ArrayList<>(rows.stream().map(Claim::name).toList());
        int number = 2;
        while (names.contains(start + " " + number)) {
            number++;
        }
        return names.contains(start) ? start + " " + number : start;
    }

    private static List<Column<Claim>> columns() {
        return List.of(
                Columns.requiredText("name", "Name", Claim::name, Claim::withName),
                Columns.choice(
                        "mode",
                        "Mode",
                        List.of(Mode.values()),
                        mode -> mode.name().toLowerCase(java.util.Locale.ROOT),
                        Claim::mode,
                        Claim::withMode),
                Columns.quantity("load", "Load", Measure.of(Unit.OHM), Claim::loadOhms, Claim::withLoadOhms)
                        .withProblem(claim -> claim.loadOhms() < 1
                                ? Optional.of(
                                        new Mark(Severity.WARNING, "Below 1 \u03a9 the cable's resistance counts."))
                                : Optional.empty()),
                Columns.quantity("power", "Power", Measure.of(Unit.WATT), Claim::powerWatts, Claim::withPowerWatts)
                        .withHover(claim -> "Stated by the maker; no uncertainty is given."),
                Columns.shownQuantity("amps", "Current", Measure.of(Unit.AMPERE), Claim::amps),
                Columns.percent("distortion", "Distortion", Claim::distortionRatio, Claim::withDistortionRatio),
                Columns.optionalQuantity("gain", "Gain", Measure.of(Unit.DECIBEL), Claim::gainDb, Claim::withGainDb),
                Columns.date("stated", "Stated on", Claim::statedOn, Claim::withStatedOn),
                Columns.check("confirmed", "Confirmed", Claim::confirmed, Claim::withConfirmed));
    }
}
