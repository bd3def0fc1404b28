// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.TableSpec;

/** The tables of the amplifier: ratings, lowest loads, fuses. */
final class AmplifierTables {
    private AmplifierTables() {}

    static TableSpec<Rating> ratings() {
        return TableSpec.of("ratings", "rating", "ratings", ratingColumns())
                .withNewRow(rows -> new Rating(
                        FreshIds.numbered(
                                "rating", rows.stream().map(Rating::id).toList()),
                        PowerKind.CONTINUOUS,
                        Mode.STEREO,
                        4,
                        50,
                        14.4,
                        0.01,
                        1000,
                        ""))
                .withDuplicate((rating, rows) -> rating.withId(FreshIds.freeOf(
                        rating.id(), rows.stream().map(Rating::id).toList())))
                .withKey(Rating::id);
    }

    private static List<Column<Rating>> ratingColumns() {
        return List.of(
                Columns.requiredText("id", "Id", Rating::id, Rating::withId).withWidth(14),
                Columns.choice("kind", "Kind", List.of(PowerKind.values()), Words::of, Rating::kind, Rating::withKind)
                        .withWidth(11),
                Columns.choice("mode", "Mode", List.of(Mode.values()), Words::of, Rating::mode, Rating::withMode)
                        .withWidth(8),
                Columns.quantity("loadOhms", "Load", Measure.of(Unit.OHM), Rating::loadOhms, Rating::withLoadOhms),
                Columns.quantity(
                                "powerWatts",
                                "Power",
                                Measure.of(Unit.WATT),
                                Rating::powerWatts,
                                Rating::withPowerWatts)
                        .withHover(AmplifierTables::powerHover),
                Columns.quantity(
                        "supplyVolts",
                        "At supply",
                        Measure.of(Unit.VOLT),
                        Rating::supplyVolts,
                        Rating::withSupplyVolts),
                Columns.percent("distortionRatio", "Distortion", Rating::distortionRatio, Rating::withDistortionRatio),
                Columns.quantity(
                        "frequencyHz",
                        "Frequency",
                        Measure.of(Unit.HERTZ),
                        Rating::frequencyHz,
                        Rating::withFrequencyHz),
                Columns.text("wording", "Wording", Rating::wording, Rating::withWording)
                        .withWidth(24));
    }

    private static String powerHover(Rating rating) {
        return rating.mode() == Mode.STEREO
                ? "Claimed for each channel; a claim has no uncertainty."
                : "Claimed in the load; a claim has no uncertainty.";
    }

    static TableSpec<LowestLoad> lowestLoads() {
        return TableSpec.of(
                        "lowestloads",
                        "limit",
                        "limits",
                        List.of(
                                Columns.choice(
                                                "mode",
                                                "Mode",
                                                List.of(Mode.values()),
                                                Words::of,
                                                LowestLoad::mode,
                                                LowestLoad::withMode)
                                        .withWidth(12),
                                Columns.quantity(
                                        "loadOhms",
                                        "Lowest load",
                                        Measure.of(Unit.OHM),
                                        LowestLoad::loadOhms,
                                        LowestLoad::withLoadOhms),
                                Columns.shown("meaning", "Meant for", AmplifierTables::meaning)))
                .withNewRow(AmplifierTables::nextLowest)
                .withKey(LowestLoad::mode);
    }

    private static String meaning(LowestLoad lowest) {
        return switch (lowest.mode()) {
            case STEREO -> "each channel";
            case BRIDGED -> "the load between two channels";
            case SINGLE -> "the one channel";
        };
    }

    private static LowestLoad nextLowest(List<LowestLoad> rows) {
        for (Mode mode : Mode.values()) {
            if (rows.stream().noneMatch(row -> row.mode() == mode)) {
                return new LowestLoad(mode, mode == Mode.BRIDGED ? 4 : 2);
            }
        }
        return new LowestLoad(Mode.STEREO, 2);
    }

    static TableSpec<Fuse> fuses() {
        return TableSpec.of(
                        "fuses",
                        "fuse",
                        "fuses",
                        List.of(
                                Columns.quantity(
                                        "ratedAmps",
                                        "Rated",
                                        Measure.of(Unit.AMPERE),
                                        Fuse::ratedAmps,
                                        Fuse::withRatedAmps),
                                Columns.text("style", "Style", Fuse::style, Fuse::withStyle)
                                        .withWidth(14),
                                Columns.text("place", "Place", Fuse::place, Fuse::withPlace)
                                        .withWidth(22)))
                .withNewRow(rows -> new Fuse(30, "blade", ""))
                .withDuplicate((fuse, rows) -> fuse);
    }
}
