// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Supply;

/** With what it was measured. */
final class BenchTables {
    private BenchTables() {}

    static List<Item> items(Bench bench) {
        List<Item> items = new ArrayList<>();
        Supply supply = bench.supply();
        items.add(new Item(
                "Supply",
                supply.name() + ", " + Figures.brief(supply.lowestVolts(), 4) + " to "
                        + Figures.volts(supply.highestVolts()) + ", limits at "
                        + Figures.brief(supply.currentLimitAmps(), 4) + "\u00a0A"));
        Cable cable = bench.cable();
        items.add(new Item(
                "Supply cable",
                Figures.brief(cable.crossSectionSquareMillimetres(), 4) + "\u00a0mm\u00b2, "
                        + Figures.brief(cable.loopMetres(), 4) + "\u00a0m there and back, "
                        + Figures.significant(cable.loopOhms() * 1000, 3) + "\u00a0m\u03a9 "
                        + (cable.measuredLoopOhms().isPresent() ? "measured" : "by copper cross-section")));
        bench.ambientCelsius()
                .ifPresent(
                        air -> items.add(new Item("Usual air temperature", Figures.fixed(air, 0) + "\u00a0\u00b0C")));
        return items;
    }

    /** Returns the meters; calibration is judged for the day of the last reading. */
    static Table meters(List<Meter> meters, Instant lastReading) {
        LocalDate day = LocalDate.ofInstant(lastReading, ZoneOffset.UTC);
        Table.Builder table = Table.titled("Meters")
                .brief("Reads")
                .text("Meter")
                .brief("Serial no.")
                .text("Specification")
                .brief("Calibrated")
                .brief("Due")
                .brief("Certificate");
        for (Meter meter : meters) {
            String due = meter.calibrationDueOn().map(LocalDate::toString).orElse(Figures.NONE);
            table.row(
                    Words.of(meter.quantity()),
                    meter.name(),
                    orNone(meter.serialNumber()),
                    specification(meter),
                    meter.calibratedOn().map(LocalDate::toString).orElse("not known"),
                    meter.isOverdueOn(day) ? due + " OVERDUE" : due,
                    orNone(meter.certificate()));
        }
        return table.build();
    }

    private static String specification(Meter meter) {
        Accuracy accuracy = meter.accuracy();
        String unit = "\u00a0" + Words.unit(meter.quantity());
        List<String> parts = new ArrayList<>();
        if (accuracy.readingRatio() > 0) {
            parts.add(Figures.percent(accuracy.readingRatio(), 3) + "\u00a0% of reading");
        }
        if (accuracy.fixed() > 0) {
            parts.add(Figures.brief(accuracy.fixed(), 3) + unit);
        }
        String stated = parts.isEmpty() ? "none stated" : "\u00b1(" + String.join(" + ", parts) + ")";
        String kind =
                accuracy.coverageFactor() > 0 ? ", k = " + Figures.brief(accuracy.coverageFactor(), 3) : ", bound";
        String step = accuracy.resolution() > 0 ? ", step " + Figures.brief(accuracy.resolution(), 3) + unit : "";
        return stated + (parts.isEmpty() ? "" : kind) + step;
    }

    static Table loads(List<BenchLoad> loads) {
        Table.Builder table = Table.titled("Loads, measured at the amplifier's terminals with the leads in place")
                .brief("Load")
                .number("Nominal", "\u03a9")
                .number("Measured, with standard uncertainty", "\u03a9")
                .number("Off nominal", "%")
                .number("Inductance", "\u00b5H")
                .number("Limit per branch", "W")
                .text("Network");
        for (BenchLoad load : loads) {
            table.row(
                    load.id(),
                    Figures.brief(load.nominalOhms(), 4),
                    join(load, BenchTables::measured),
                    join(load, branch -> Figures.signed((branch.ohms() / load.nominalOhms() - 1) * 100, 2)),
                    join(load, branch -> Figures.brief(branch.inductanceHenries() * 1e6, 3)),
                    Figures.brief(load.powerLimitWatts(), 4),
                    join(load, branch -> orNone(branch.network())));
        }
        return table.build();
    }

    private static String measured(LoadBranch branch) {
        return Rounding.of(branch.ohms(), branch.standardUncertaintyOhms()).text();
    }

    private static String join(BenchLoad load, Function<LoadBranch, String> text) {
        List<String> texts = load.branches().stream().map(text).toList();
        boolean same = texts.stream().distinct().count() == 1;
        return same ? texts.get(0) : texts.stream().collect(Collectors.joining("; "));
    }

    private static String orNone(String text) {
        return text.isBlank() ? Figures.NONE : text;
    }
}
