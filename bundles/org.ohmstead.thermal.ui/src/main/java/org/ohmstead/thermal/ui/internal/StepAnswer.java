// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.plot.Plot;

/**
 * All that the calculator says of a step.
 *
 * @param rows of the table
 * @param plot temperatures over time; empty when they are not known
 * @param whyNoPlot what to do so that there is one
 * @param remarks what was assumed, in whole sentences
 * @param summary the figures that matter first, a sentence
 * @param alert what must be said first; empty when all is well
 */
record StepAnswer(
        List<FigureRow> rows,
        Optional<Plot> plot,
        String whyNoPlot,
        List<String> remarks,
        String summary,
        Optional<String> alert) {
    StepAnswer {
        rows = List.copyOf(rows);
        remarks = List.copyOf(remarks);
    }

    /** Works a step out. Takes milliseconds; not for the thread of the user interface. */
    static StepAnswer of(StepQuestion question, Optional<Project> project) {
        StepPower power = StepPower.of(question, project);
        List<FigureRow> rows = new ArrayList<>();
        rows.add(FigureRow.heading("Power"));
        rows.addAll(power(power));
        rows.add(FigureRow.heading("Supply side"));
        StepSupply.Lines supply = StepSupply.of(question, power, project);
        rows.addAll(supply.rows());
        rows.add(FigureRow.heading("Temperatures"));
        List<String> remarks = new ArrayList<>(power.remarks());
        Optional<WarmBody> body;
        try {
            body = project.flatMap(open -> WarmBody.of(open, power.heatWatts().middle(), question.airCelsius()));
        } catch (IllegalArgumentException refused) {
            rows.add(FigureRow.unknown("Case", SinkGroup.NO_ESTIMATE));
            return new StepAnswer(
                    rows, Optional.empty(), SinkGroup.NO_ESTIMATE, remarks, summary(rows), supply.alert());
        }
        if (body.isEmpty()) {
            String why = project.isEmpty()
                    ? "Open a project that knows how the amplifier gets rid of its heat."
                    : "Enter the resistance from case to air, or the size of the sink, on Heat and pacing; or find it"
                            + " from a logged warm-up.";
            rows.add(FigureRow.unknown("Case", why));
            return new StepAnswer(rows, Optional.empty(), why, remarks, summary(rows), supply.alert());
        }
        remarks.addAll(body.get().remarks());
        remarks.addAll(junctions(question, power, body.get()));
        StepCourse course = new StepCourse(question, power, body.get());
        rows.addAll(course.rows());
        rows.add(FigureRow.heading("What the limits allow"));
        rows.addAll(new StepLimits(question, project.orElseThrow(), body.get(), power).rows());
        return new StepAnswer(
                rows,
                course.plot(),
                "Enter the heat capacity of the case on Heat and pacing, or find it from a logged warm-up.",
                remarks,
                summary(rows),
                supply.alert());
    }

    private static List<String> junctions(StepQuestion question, StepPower power, WarmBody body) {
        List<String> remarks = new ArrayList<>();
        if (body.deviceKelvinPerWatt().isPresent()) {
            if (question.signal() == StepSignal.BURST) {
                remarks.add("Junctions are told for the loud part of the burst, as if they followed it at once.");
            }
            if (power.stageWatts().isEmpty()) {
                remarks.add("All heat is taken to come from the junctions, which errs to the hot side.");
            }
        }
        return remarks;
    }

    /** Returns how long, how hot, how much current, as far as they are known. */
    private static String summary(List<FigureRow> rows) {
        List<String> parts = new ArrayList<>();
        named(rows, StepLimits.ON_TIME).ifPresent(row -> parts.add("may be on: " + row.figure()));
        named(rows, StepCourse.CASE_AFTER)
                .ifPresent(row -> parts.add("case " + row.figure() + row.name().substring("Case".length())));
        named(rows, StepSupply.AVERAGE).ifPresent(row -> parts.add(row.figure() + " from the supply"));
        named(rows, StepSupply.OPEN).ifPresent(row -> parts.add(fuses(row)));
        String all = String.join("; ", parts);
        return all.isEmpty() ? "" : Character.toUpperCase(all.charAt(0)) + all.substring(1) + ".";
    }

    private static String fuses(FigureRow row) {
        return switch (row.value()) {
            case StepSupply.NEVER -> "fuses hold";
            case StepSupply.NOT_IN_TABLE -> "fuses above what they are meant to carry for ever";
            default -> "fuses may open after " + row.figure();
        };
    }

    private static Optional<FigureRow> named(List<FigureRow> rows, String beginning) {
        return rows.stream()
                .filter(row -> row.name().startsWith(beginning) && row.kind() != FigureRow.Kind.UNKNOWN)
                .findFirst();
    }

    private static List<FigureRow> power(StepPower power) {
        List<FigureRow> rows = new ArrayList<>();
        rows.add(HeatWords.row("Output, all loads", Range.of(power.outputWatts()), "W", "on average"));
        rows.add(power.stageWatts()
                .map(watts -> HeatWords.row("Stage loss", watts, "W", power.basis()))
                .orElseGet(() -> FigureRow.unknown("Stage loss", "Not told apart: " + power.basis() + ".")));
        rows.add(power.converterWatts()
                .map(watts -> HeatWords.row("Converter loss", watts, "W", ""))
                .orElseGet(() -> FigureRow.unknown("Converter loss", "Not told apart: " + power.basis() + ".")));
        rows.add(HeatWords.row("Heat of the amplifier", power.heatWatts(), "W", power.basis()));
        rows.add(HeatWords.row("Input power", power.inputWatts(), "W", ""));
        return rows;
    }
}
