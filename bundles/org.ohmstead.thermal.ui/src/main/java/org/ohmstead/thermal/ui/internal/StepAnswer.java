// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.plot.Plot;
import org.ohmstead.units.text.Messages;

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
    private static final Messages TEXTS = Messages.of(StepAnswer.class);

    StepAnswer {
        rows = List.copyOf(rows);
        remarks = List.copyOf(remarks);
    }

    /** Works a step out. Takes milliseconds; not for the thread of the user interface. */
    static StepAnswer of(StepQuestion question, Optional<Project> project) {
        StepPower power = StepPower.of(question, project);
        List<FigureRow> rows = new ArrayList<>();
        rows.add(FigureRow.heading(TEXTS.text("answer.power")));
        rows.addAll(power(power));
        rows.add(FigureRow.heading(TEXTS.text("answer.supply")));
        StepSupply.Lines supply = StepSupply.of(question, power, project);
        rows.addAll(supply.rows());
        rows.add(FigureRow.heading(TEXTS.text("answer.temperatures")));
        List<String> remarks = new ArrayList<>(power.remarks());
        Optional<WarmBody> body;
        try {
            body = project.flatMap(open -> WarmBody.of(open, power.heatWatts().middle(), question.airCelsius()));
        } catch (IllegalArgumentException refused) {
            rows.add(FigureRow.unknown(TEXTS.text("place.CASE"), SinkGroup.noEstimate()));
            return new StepAnswer(
                    rows, Optional.empty(), SinkGroup.noEstimate(), remarks, summary(rows, question), supply.alert());
        }
        if (body.isEmpty()) {
            String why = project.isEmpty() ? TEXTS.text("answer.noProject") : TEXTS.text("answer.noResistance");
            rows.add(FigureRow.unknown(TEXTS.text("place.CASE"), why));
            return new StepAnswer(rows, Optional.empty(), why, remarks, summary(rows, question), supply.alert());
        }
        remarks.addAll(body.get().remarks());
        remarks.addAll(junctions(question, power, body.get()));
        StepCourse course = new StepCourse(question, power, body.get());
        rows.addAll(course.rows());
        rows.add(FigureRow.heading(TEXTS.text("answer.limits")));
        rows.addAll(new StepLimits(question, project.orElseThrow(), body.get(), power).rows());
        return new StepAnswer(
                rows, course.plot(), TEXTS.text("answer.noCapacity"), remarks, summary(rows, question), supply.alert());
    }

    private static List<String> junctions(StepQuestion question, StepPower power, WarmBody body) {
        List<String> remarks = new ArrayList<>();
        if (body.deviceKelvinPerWatt().isPresent()) {
            if (question.signal() == StepSignal.BURST) {
                remarks.add(TEXTS.text("answer.junctionsLoud"));
            }
            if (power.stageWatts().isEmpty()) {
                remarks.add(TEXTS.text("answer.junctionsAll"));
            }
        }
        return remarks;
    }

    /** Returns how long, how hot, how much current, as far as they are known. */
    private static String summary(List<FigureRow> rows, StepQuestion question) {
        List<String> parts = new ArrayList<>();
        String after = HeatWords.time(question.seconds());
        about(rows, FigureRow.Topic.ON_TIME).ifPresent(row -> parts.add(TEXTS.text("answer.sum.on", row.figure())));
        about(rows, FigureRow.Topic.CASE_AFTER)
                .ifPresent(row -> parts.add(TEXTS.text("answer.sum.case", row.figure(), after)));
        about(rows, FigureRow.Topic.SUPPLY_AMPS)
                .ifPresent(row -> parts.add(TEXTS.text("answer.sum.amps", row.figure())));
        about(rows, FigureRow.Topic.FUSES_HOLD).ifPresent(row -> parts.add(TEXTS.text("answer.sum.hold")));
        about(rows, FigureRow.Topic.FUSES_ABOVE).ifPresent(row -> parts.add(TEXTS.text("answer.sum.above")));
        about(rows, FigureRow.Topic.FUSES_OPEN)
                .ifPresent(row -> parts.add(TEXTS.text("answer.sum.open", row.figure())));
        String all = String.join("; ", parts);
        return all.isEmpty() ? "" : Character.toUpperCase(all.charAt(0)) + all.substring(1) + ".";
    }

    private static Optional<FigureRow> about(List<FigureRow> rows, FigureRow.Topic topic) {
        return rows.stream()
                .filter(row -> row.topic() == topic && row.kind() != FigureRow.Kind.UNKNOWN)
                .findFirst();
    }

    private static List<FigureRow> power(StepPower power) {
        List<FigureRow> rows = new ArrayList<>();
        rows.add(HeatWords.row(
                TEXTS.text("answer.output"), Range.of(power.outputWatts()), "W", TEXTS.text("answer.onAverage")));
        rows.add(power.stageWatts()
                .map(watts -> HeatWords.row(TEXTS.text("answer.stage"), watts, "W", power.basis()))
                .orElseGet(() ->
                        FigureRow.unknown(TEXTS.text("answer.stage"), TEXTS.text("answer.notApart", power.basis()))));
        rows.add(power.converterWatts()
                .map(watts -> HeatWords.row(TEXTS.text("answer.converter"), watts, "W", ""))
                .orElseGet(() -> FigureRow.unknown(
                        TEXTS.text("answer.converter"), TEXTS.text("answer.notApart", power.basis()))));
        rows.add(HeatWords.row(TEXTS.text("answer.heat"), power.heatWatts(), "W", power.basis()));
        rows.add(HeatWords.row(TEXTS.text("answer.input"), power.inputWatts(), "W", ""));
        return rows;
    }
}
