// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ohmstead.model.Range;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.Mark;

/** The columns of the steps. */
final class StepTableColumns {
    private static final Messages TEXTS = Messages.of(StepTableColumns.class);
    private static final double SAME_KELVIN = 0.01;

    private StepTableColumns() {}

    static List<Column<StepTableRow>> all() {
        List<Column<StepTableRow>> all = new ArrayList<>();
        times(all);
        for (ForecastPlace.Kind kind : ForecastPlace.Kind.values()) {
            all.add(peak(kind));
        }
        powers(all);
        return List.copyOf(all);
    }

    private static void times(List<Column<StepTableRow>> all) {
        all.add(number("number", "#", "", row -> Integer.toString(row.number())));
        all.add(Columns.<StepTableRow>shown("step", TEXTS.text("steps.step"), StepTableRow::id)
                .withHover(row -> String.join(" ", row.step().remarks()))
                .withProblem(row ->
                        row.obstacle().map(obstacle -> new Mark(Severity.ERROR, ForecastWords.obstacle(obstacle)))));
        all.add(timed("start", TEXTS.text("steps.start"), "min", job -> ForecastWords.minutes(job.startSeconds()))
                .withHover(StepTableColumns::change));
        all.add(timed("rest", TEXTS.text("steps.rest"), "s", job -> ForecastWords.seconds(job.restSeconds()))
                .withHover(row -> row.restCause().isEmpty() ? "" : TEXTS.text("steps.rest.hover", row.restCause())));
        all.add(Columns.shown("cause", TEXTS.text("steps.restFor"), StepTableRow::restCause));
        all.add(timed(
                "on",
                TEXTS.text("steps.on"),
                "s",
                job -> ForecastWords.seconds(job.endSeconds() - job.startSeconds())));
    }

    private static void powers(List<Column<StepTableRow>> all) {
        all.add(optional("power", TEXTS.text("steps.power"), Unit.WATT.symbol(), row -> row.step()
                        .power()
                        .watts())
                .withHover(StepTableColumns::power));
        all.add(Columns.<StepTableRow>shown(
                        "basis",
                        TEXTS.text("steps.from"),
                        row -> ForecastWords.basis(row.step().power().basis()))
                .withHover(row -> row.step().power().sentence()));
        all.add(optional("average", TEXTS.text("steps.draw"), Unit.AMPERE.symbol(), row -> row.step()
                        .current()
                        .map(current -> OptionalDouble.of(current.averageAmps()))
                        .orElse(OptionalDouble.empty()))
                .withHover(StepTableColumns::draw));
        all.add(optional("rms", TEXTS.text("steps.rms"), Unit.AMPERE.symbol(), row -> row.step()
                        .current()
                        .map(current -> OptionalDouble.of(current.rmsAmps()))
                        .orElse(OptionalDouble.empty()))
                .withHover(row -> TEXTS.text("steps.rms.hover", SupplyCautions.fuses())));
        all.add(optional("volts", TEXTS.text("steps.terminals"), Unit.VOLT.symbol(), StepTableRow::terminalVolts)
                .withHover(StepTableColumns::volts));
        all.add(number(
                        "heat",
                        TEXTS.text("steps.loss"),
                        Unit.WATT.symbol(),
                        row -> known(row)
                                ? HeatWords.number(row.step().heatWatts().middle())
                                : ForecastWords.NONE)
                .withHover(row -> TEXTS.text(
                        "steps.loss.hover", HeatWords.range(row.step().heatWatts()))));
        all.add(optional("cable", TEXTS.text("steps.cableLoss"), Unit.WATT.symbol(), StepTableRow::cableWatts)
                .withHover(row -> TEXTS.text("steps.cableLoss.hover", SupplyCautions.cables())));
        all.add(number(
                        "load",
                        TEXTS.text("steps.load"),
                        Unit.WATT.symbol(),
                        row -> known(row) ? HeatWords.number(row.step().outputWatts()) : ForecastWords.NONE)
                .withHover(row -> TEXTS.text("steps.load.hover")));
    }

    private static String change(StepTableRow row) {
        return row.job()
                .filter(job -> job.changeSeconds() > 0)
                .map(job -> TEXTS.text("steps.change", HeatWords.time(job.changeSeconds())))
                .orElse("");
    }

    private static boolean known(StepTableRow row) {
        return row.step().power().watts().isPresent();
    }

    private static String power(StepTableRow row) {
        return TEXTS.text("steps.power.hover", row.step().power().sentence());
    }

    private static String draw(StepTableRow row) {
        return row.step()
                .current()
                .map(current -> TEXTS.text(
                        "steps.draw.hover",
                        HeatWords.number(row.step().loudAmps()),
                        HeatWords.number(current.peakAmps())))
                .orElse("");
    }

    private static String volts(StepTableRow row) {
        OptionalDouble set = row.step().setVolts();
        return set.isPresent()
                ? TEXTS.text(
                        "steps.volts.hover",
                        HeatWords.number(set.getAsDouble()),
                        HeatWords.number(row.step().cableDropVolts()))
                : "";
    }

    private static Column<StepTableRow> peak(ForecastPlace.Kind kind) {
        return number("peak." + kind.name(), kind.title(), TEXTS.text("steps.celsiusLeft"), row -> peak(row, kind))
                .withHover(row -> band(row, kind))
                .withProblem(row -> problem(row, kind));
    }

    private static String peak(StepTableRow row, ForecastPlace.Kind kind) {
        StepTableRow.Peak peak = row.peaks().get(kind);
        if (peak == null) {
            return ForecastWords.NONE;
        }
        String hottest = ForecastWords.celsius(peak.celsius().high());
        return peak.roomKelvin().isPresent()
                ? hottest + " (" + Numbers.format("%.0f", peak.roomKelvin().getAsDouble()) + ")"
                : hottest;
    }

    private static String band(StepTableRow row, ForecastPlace.Kind kind) {
        StepTableRow.Peak peak = row.peaks().get(kind);
        if (peak == null) {
            return "";
        }
        Range celsius = peak.celsius();
        String name = peak.place().heading();
        String low = ForecastWords.celsius(celsius.low());
        String high = ForecastWords.celsius(celsius.high());
        OptionalDouble limit = peak.place().limitCelsius();
        return limit.isPresent()
                ? TEXTS.text(
                        "steps.band.limit",
                        name,
                        low,
                        high,
                        HeatWords.number(limit.getAsDouble()),
                        HeatWords.number(peak.marginKelvin()))
                : TEXTS.text("steps.band", name, low, high);
    }

    private static Optional<Mark> problem(StepTableRow row, ForecastPlace.Kind kind) {
        StepTableRow.Peak peak = row.peaks().get(kind);
        double room =
                peak == null ? Double.POSITIVE_INFINITY : peak.roomKelvin().orElse(Double.POSITIVE_INFINITY);
        if (room < 0) {
            return Optional.of(new Mark(Severity.ERROR, TEXTS.text("steps.tooHot", band(row, kind))));
        }
        return peak != null && room < peak.marginKelvin() - SAME_KELVIN
                ? Optional.of(new Mark(Severity.WARNING, TEXTS.text("steps.tooNear", band(row, kind))))
                : Optional.empty();
    }

    private static Column<StepTableRow> timed(
            String id, String header, String unit, Function<ScheduledJob, String> shown) {
        return number(id, header, unit, row -> row.job().map(shown).orElse(ForecastWords.NONE));
    }

    private static Column<StepTableRow> optional(
            String id, String header, String unit, Function<StepTableRow, OptionalDouble> get) {
        return number(id, header, unit, row -> ForecastWords.number(get.apply(row)));
    }

    private static Column<StepTableRow> number(
            String id, String header, String unit, Function<StepTableRow, String> shown) {
        return Columns.<StepTableRow>shownQuantity(id, header, Measure.named(unit), row -> 0)
                .withShown(shown);
    }
}
