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
        return TableSpec.of("ratings", Texts.text("table.rating"), Texts.text("table.ratings"), ratingColumns())
                .withEditNames(Texts.edits("rating"))
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
                Columns.requiredText("id", Texts.text("table.id"), Rating::id, Rating::withId)
                        .withWidth(14),
                Columns.choice(
                                "kind",
                                Texts.text("rating.kind"),
                                List.of(PowerKind.values()),
                                Words::of,
                                Rating::kind,
                                Rating::withKind)
                        .withWidth(11),
                Columns.choice(
                                "mode",
                                Texts.text("rating.mode"),
                                List.of(Mode.values()),
                                Words::of,
                                Rating::mode,
                                Rating::withMode)
                        .withWidth(8),
                Columns.quantity(
                        "loadOhms",
                        Texts.text("rating.load"),
                        Measure.of(Unit.OHM),
                        Rating::loadOhms,
                        Rating::withLoadOhms),
                Columns.quantity(
                                "powerWatts",
                                Texts.text("rating.power"),
                                Measure.of(Unit.WATT),
                                Rating::powerWatts,
                                Rating::withPowerWatts)
                        .withHover(AmplifierTables::powerHover),
                Columns.quantity(
                        "supplyVolts",
                        Texts.text("rating.supply"),
                        Measure.of(Unit.VOLT),
                        Rating::supplyVolts,
                        Rating::withSupplyVolts),
                Columns.percent(
                        "distortionRatio",
                        Texts.text("rating.distortion"),
                        Rating::distortionRatio,
                        Rating::withDistortionRatio),
                Columns.quantity(
                        "frequencyHz",
                        Texts.text("rating.frequency"),
                        Measure.of(Unit.HERTZ),
                        Rating::frequencyHz,
                        Rating::withFrequencyHz),
                Columns.text("wording", Texts.text("rating.wording"), Rating::wording, Rating::withWording)
                        .withWidth(24));
    }

    private static String powerHover(Rating rating) {
        return rating.mode() == Mode.STEREO
                ? Texts.text("rating.power.hover.each")
                : Texts.text("rating.power.hover.load");
    }

    static TableSpec<LowestLoad> lowestLoads() {
        return TableSpec.of(
                        "lowestloads",
                        Texts.text("table.limit"),
                        Texts.text("table.limits"),
                        List.of(
                                Columns.choice(
                                                "mode",
                                                Texts.text("lowest.mode"),
                                                List.of(Mode.values()),
                                                Words::of,
                                                LowestLoad::mode,
                                                LowestLoad::withMode)
                                        .withWidth(12),
                                Columns.quantity(
                                        "loadOhms",
                                        Texts.text("lowest.load"),
                                        Measure.of(Unit.OHM),
                                        LowestLoad::loadOhms,
                                        LowestLoad::withLoadOhms),
                                Columns.shown("meaning", Texts.text("lowest.meaning"), AmplifierTables::meaning)))
                .withEditNames(Texts.edits("limit"))
                .withNewRow(AmplifierTables::nextLowest)
                .withKey(LowestLoad::mode);
    }

    private static String meaning(LowestLoad lowest) {
        return Texts.text("lowest.meaning." + lowest.mode());
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
                        Texts.text("table.fuse"),
                        Texts.text("table.fuses"),
                        List.of(
                                Columns.quantity(
                                        "ratedAmps",
                                        Texts.text("fuse.rated"),
                                        Measure.of(Unit.AMPERE),
                                        Fuse::ratedAmps,
                                        Fuse::withRatedAmps),
                                Columns.text("style", Texts.text("fuse.style"), Fuse::style, Fuse::withStyle)
                                        .withWidth(14),
                                Columns.text("place", Texts.text("fuse.place"), Fuse::place, Fuse::withPlace)
                                        .withWidth(22)))
                .withEditNames(Texts.edits("fuse"))
                .withNewRow(rows -> new Fuse(30, Texts.text("fuse.style.usual"), ""))
                .withDuplicate((fuse, rows) -> fuse);
    }
}
