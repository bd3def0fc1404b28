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
    private final Speech speech;

    BenchTables(Speech speech) {
        this.speech = speech;
    }

    List<Item> items(Bench bench) {
        List<Item> items = new ArrayList<>();
        Supply supply = bench.supply();
        items.add(new Item(
                speech.text("supply"),
                speech.text(
                        "bench.supply",
                        supply.name(),
                        speech.brief(supply.lowestVolts(), 4),
                        speech.volts(supply.highestVolts()),
                        speech.brief(supply.currentLimitAmps(), 4) + "\u00a0A")));
        Cable cable = bench.cable();
        items.add(new Item(
                speech.text("bench.cable"),
                speech.text(
                        cable.measuredLoopOhms().isPresent() ? "bench.cable.measured" : "bench.cable.reckoned",
                        speech.brief(cable.crossSectionSquareMillimetres(), 4) + "\u00a0mm\u00b2",
                        speech.brief(cable.loopMetres(), 4) + "\u00a0m",
                        speech.significant(cable.loopOhms() * 1000, 3) + "\u00a0m\u03a9")));
        bench.ambientCelsius()
                .ifPresent(
                        air -> items.add(new Item(speech.text("bench.air"), speech.fixed(air, 0) + "\u00a0\u00b0C")));
        return items;
    }

    /** Returns the meters; calibration is judged for the day of the last reading. */
    Table meters(List<Meter> meters, Instant lastReading) {
        LocalDate day = LocalDate.ofInstant(lastReading, ZoneOffset.UTC);
        Table.Builder table = Table.titled(speech.text("meters.title"))
                .brief(speech.text("meters.reads"))
                .text(speech.text("meters.meter"))
                .brief(speech.text("meters.serial"))
                .text(speech.text("meters.specification"))
                .brief(speech.text("meters.calibrated"))
                .brief(speech.text("meters.due"))
                .brief(speech.text("meters.certificate"));
        for (Meter meter : meters) {
            String due = meter.calibrationDueOn().map(LocalDate::toString).orElse(Figures.NONE);
            table.row(
                    speech.of(meter.quantity()),
                    meter.name(),
                    orNone(meter.serialNumber()),
                    specification(meter),
                    meter.calibratedOn().map(LocalDate::toString).orElse(speech.text("meters.notKnown")),
                    meter.isOverdueOn(day) ? speech.text("meters.overdue", due) : due,
                    orNone(meter.certificate()));
        }
        return table.build();
    }

    private String specification(Meter meter) {
        Accuracy accuracy = meter.accuracy();
        String unit = "\u00a0" + Words.unit(meter.quantity());
        List<String> parts = new ArrayList<>();
        if (accuracy.readingRatio() > 0) {
            parts.add(speech.text("meters.ofReading", speech.percent(accuracy.readingRatio(), 3)));
        }
        if (accuracy.fixed() > 0) {
            parts.add(speech.brief(accuracy.fixed(), 3) + unit);
        }
        String stated = parts.isEmpty() ? speech.text("meters.none") : kind(accuracy, String.join(" + ", parts));
        return accuracy.resolution() > 0
                ? speech.text("meters.step", stated, speech.brief(accuracy.resolution(), 3) + unit)
                : stated;
    }

    private String kind(Accuracy accuracy, String parts) {
        String both = "\u00b1(" + parts + ")";
        return accuracy.coverageFactor() > 0
                ? speech.text("meters.factor", both, speech.brief(accuracy.coverageFactor(), 3))
                : speech.text("meters.bound", both);
    }

    Table loads(List<BenchLoad> loads) {
        Table.Builder table = Table.titled(speech.text("loads.title"))
                .brief(speech.text("load"))
                .number(speech.text("loads.nominal"), "\u03a9")
                .number(speech.text("loads.measured"), "\u03a9")
                .number(speech.text("loads.off"), "%")
                .number(speech.text("loads.inductance"), "\u00b5H")
                .number(speech.text("loads.limit"), "W")
                .text(speech.text("loads.network"));
        for (BenchLoad load : loads) {
            table.row(
                    load.id(),
                    speech.brief(load.nominalOhms(), 4),
                    join(load, this::measured),
                    join(load, branch -> speech.signed((branch.ohms() / load.nominalOhms() - 1) * 100, 2)),
                    join(load, branch -> speech.brief(branch.inductanceHenries() * 1e6, 3)),
                    speech.brief(load.powerLimitWatts(), 4),
                    join(load, branch -> orNone(branch.network())));
        }
        return table.build();
    }

    private String measured(LoadBranch branch) {
        return speech.stated(branch.ohms(), branch.standardUncertaintyOhms());
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
