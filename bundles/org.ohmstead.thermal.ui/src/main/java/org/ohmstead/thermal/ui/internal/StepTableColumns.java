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
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.Mark;

/** The columns of the steps. */
final class StepTableColumns {
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
        all.add(Columns.<StepTableRow>shown("step", "Step", StepTableRow::id)
                .withHover(row -> String.join(" ", row.step().remarks()))
                .withProblem(row ->
                        row.obstacle().map(obstacle -> new Mark(Severity.ERROR, ForecastWords.obstacle(obstacle)))));
        all.add(timed("start", "Start", "min", job -> ForecastWords.minutes(job.startSeconds()))
                .withHover(StepTableColumns::change));
        all.add(timed("rest", "Rest", "s", job -> ForecastWords.seconds(job.restSeconds()))
                .withHover(
                        row -> row.restCause().isEmpty() ? "" : "Rest before the step, for: " + row.restCause() + "."));
        all.add(Columns.shown("cause", "Rest for", StepTableRow::restCause));
        all.add(timed("on", "On", "s", job -> ForecastWords.seconds(job.endSeconds() - job.startSeconds())));
    }

    private static void powers(List<Column<StepTableRow>> all) {
        all.add(optional("power", "Power", Unit.WATT.symbol(), row -> row.step()
                        .power()
                        .watts())
                .withHover(StepTableColumns::power));
        all.add(Columns.<StepTableRow>shown(
                        "basis",
                        "From",
                        row -> ForecastWords.basis(row.step().power().basis()))
                .withHover(row -> row.step().power().sentence()));
        all.add(optional("average", "Draw", Unit.AMPERE.symbol(), row -> row.step()
                        .current()
                        .map(current -> OptionalDouble.of(current.averageAmps()))
                        .orElse(OptionalDouble.empty()))
                .withHover(StepTableColumns::draw));
        all.add(optional("rms", "RMS", Unit.AMPERE.symbol(), row -> row.step()
                        .current()
                        .map(current -> OptionalDouble.of(current.rmsAmps()))
                        .orElse(OptionalDouble.empty()))
                .withHover(row -> "What heats cable and fuses, at the most. " + SupplyCautions.FUSES));
        all.add(optional("volts", "Terminals", Unit.VOLT.symbol(), StepTableRow::terminalVolts)
                .withHover(StepTableColumns::volts));
        all.add(number(
                        "heat",
                        "Amplifier loss",
                        Unit.WATT.symbol(),
                        row -> known(row)
                                ? HeatWords.number(row.step().heatWatts().middle())
                                : ForecastWords.NONE)
                .withHover(row -> "Mean heat in the amplifier: "
                        + HeatWords.range(row.step().heatWatts()) + " W as far as its data tell."));
        all.add(optional("cable", "Cable loss", Unit.WATT.symbol(), StepTableRow::cableWatts)
                .withHover(row -> "At the most. " + SupplyCautions.CABLES));
        all.add(number(
                        "load",
                        "Load",
                        Unit.WATT.symbol(),
                        row -> known(row) ? HeatWords.number(row.step().outputWatts()) : ForecastWords.NONE)
                .withHover(row -> "Mean power of all channels together, which becomes heat in the load."));
    }

    private static String change(StepTableRow row) {
        return row.job()
                .filter(job -> job.changeSeconds() > 0)
                .map(job -> "After " + HeatWords.time(job.changeSeconds()) + " of changing load, mode or supply.")
                .orElse("");
    }

    private static boolean known(StepTableRow row) {
        return row.step().power().watts().isPresent();
    }

    private static String power(StepTableRow row) {
        return "Of each channel in stereo, in the load otherwise; in bursts while they are loud. "
                + row.step().power().sentence();
    }

    private static String draw(StepTableRow row) {
        return row.step()
                .current()
                .map(current -> "Average current at the most; loud "
                        + HeatWords.number(row.step().loudAmps()) + " A, crest " + HeatWords.number(current.peakAmps())
                        + " A.")
                .orElse("");
    }

    private static String volts(StepTableRow row) {
        OptionalDouble set = row.step().setVolts();
        return set.isPresent()
                ? "The supply has to be set to " + HeatWords.number(set.getAsDouble()) + " V then; the cable takes "
                        + HeatWords.number(row.step().cableDropVolts()) + " V."
                : "";
    }

    private static Column<StepTableRow> peak(ForecastPlace.Kind kind) {
        return number("peak." + kind.name(), kind.title(), "\u00b0C, K left", row -> peak(row, kind))
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
        String limit = peak.place().limitCelsius().isPresent()
                ? " Its limit is "
                        + HeatWords.number(peak.place().limitCelsius().getAsDouble()) + " \u00b0C, of which "
                        + HeatWords.number(peak.marginKelvin()) + " K are to be left."
                : " No limit is known.";
        return peak.place().heading() + " at the most: " + ForecastWords.celsius(celsius.low()) + " \u2013 "
                + ForecastWords.celsius(celsius.high()) + " \u00b0C as far as the data tell." + limit
                + " Let it cool before you touch it.";
    }

    private static Optional<Mark> problem(StepTableRow row, ForecastPlace.Kind kind) {
        StepTableRow.Peak peak = row.peaks().get(kind);
        double room =
                peak == null ? Double.POSITIVE_INFINITY : peak.roomKelvin().orElse(Double.POSITIVE_INFINITY);
        if (room < 0) {
            return Optional.of(new Mark(Severity.ERROR, "It would get too hot. " + band(row, kind)));
        }
        return peak != null && room < peak.marginKelvin() - SAME_KELVIN
                ? Optional.of(new Mark(Severity.WARNING, "It would come too near to its limit. " + band(row, kind)))
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
