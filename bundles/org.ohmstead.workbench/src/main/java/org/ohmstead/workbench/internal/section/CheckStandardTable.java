// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.TableSpec;

/** The table of what is measured again and again to see whether the bench still is what it was. */
final class CheckStandardTable {
    private static final int LEAST_BASELINE = 4;
    private static final int MOST_BASELINE = 10_000;
    private static final int MOST_DAYS = 3660;
    private static final String NONE = "\u2013";

    private CheckStandardTable() {}

    static TableSpec<CheckStandard> spec(Supplier<Optional<Project>> project) {
        List<Column<CheckStandard>> columns = new ArrayList<>(whatItIs(project));
        columns.addAll(howItIsJudged());
        return TableSpec.of("checkstandards", "check standard", "check standards", columns)
                .withNewRow(CheckStandardTable::fresh)
                .withDuplicate((standard, rows) -> standard.withId(FreshIds.freeOf(
                        standard.id(), rows.stream().map(CheckStandard::id).toList())))
                .withKey(CheckStandard::id);
    }

    private static CheckStandard fresh(List<CheckStandard> rows) {
        return new CheckStandard(
                FreshIds.numbered("check", rows.stream().map(CheckStandard::id).toList()),
                "New check standard",
                "",
                CheckStandard.POWER,
                "",
                "W",
                20,
                0.01,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                1);
    }

    private static List<Column<CheckStandard>> whatItIs(Supplier<Optional<Project>> project) {
        return List.of(
                Columns.requiredText("id", "Id", CheckStandard::id, CheckStandard::withId)
                        .withWidth(12),
                Columns.requiredText("name", "Name", CheckStandard::name, CheckStandard::withName)
                        .withWidth(34),
                Columns.<CheckStandard, String>choiceFrom(
                                "stepId",
                                "Values from",
                                standard -> sources(project.get()),
                                step -> step.isEmpty() ? "typed in" : step,
                                CheckStandard::stepId,
                                CheckStandard::withStepId)
                        .withHover(standard -> standard.isTypedIn()
                                ? "Its values are typed in by hand."
                                : "Each reading of the step \"" + standard.stepId() + "\" gives a value.")
                        .withWidth(20),
                Columns.requiredText("figureId", "Figure", CheckStandard::figureId, CheckStandard::withFigureId)
                        .withHover(standard -> "\"power\", or the id of a figure that a measurement of the step finds.")
                        .withWidth(14),
                Columns.text("channel", "Channel", CheckStandard::channel, CheckStandard::withChannel)
                        .withHover(standard -> "Which channel of the reading; empty: the weakest.")
                        .withWidth(10),
                Columns.text("unit", "Unit", CheckStandard::unit, CheckStandard::withUnit)
                        .withWidth(8));
    }

    private static List<String> sources(Optional<Project> project) {
        List<String> sources = new ArrayList<>(List.of(""));
        project.ifPresent(
                open -> sources.addAll(open.plan().stream().map(Step::id).toList()));
        return sources;
    }

    private static List<Column<CheckStandard>> howItIsJudged() {
        Measure plain = Measure.named("");
        return List.of(
                Columns.<CheckStandard>optionalQuantity(
                                "referenceValue",
                                "True value",
                                plain,
                                CheckStandard::referenceValue,
                                CheckStandard::withReferenceValue)
                        .withShown(standard -> inUnit(standard, standard.referenceValue()))
                        .withHover(CheckStandardTable::reference)
                        .withWidth(13),
                Columns.<CheckStandard>optionalQuantity(
                                "referenceStandardUncertainty",
                                "Std. uncertainty",
                                plain,
                                CheckStandard::referenceStandardUncertainty,
                                CheckStandard::withReferenceStandardUncertainty)
                        .withShown(standard -> inUnit(standard, standard.referenceStandardUncertainty()))
                        .withHover(CheckStandardTable::reference),
                Columns.integer(
                                "baselineCount",
                                "First values",
                                LEAST_BASELINE,
                                MOST_BASELINE,
                                CheckStandard::baselineCount,
                                CheckStandard::withBaselineCount)
                        .withHover(
                                standard -> "So many first values set the limits of the control chart; 20 are usual."),
                Columns.percent(
                                "significanceRatio",
                                "False alarms",
                                CheckStandard::significanceRatio,
                                CheckStandard::withSignificanceRatio)
                        .withHover(standard ->
                                "The chance that a test of drift or outliers gives an alarm though nothing is wrong."),
                Columns.<CheckStandard>integer(
                                "everyDays",
                                "Every",
                                0,
                                MOST_DAYS,
                                CheckStandard::everyDays,
                                CheckStandard::withEveryDays)
                        .withShown(CheckStandardTable::every)
                        .withHover(standard -> "After so many days a new value is due; 0: no reminder.")
                        .withWidth(12));
    }

    private static String inUnit(CheckStandard standard, OptionalDouble value) {
        return value.isEmpty() ? NONE : Measure.named(standard.unit()).shownWithUnit(value.getAsDouble());
    }

    private static String every(CheckStandard standard) {
        return standard.everyDays() == 0 ? NONE : Words.count(standard.everyDays(), "day", "days");
    }

    private static String reference(CheckStandard standard) {
        if (standard.referenceValue().isEmpty()) {
            return "What its certificate states, in its unit. Empty: not known; the bench is then compared with itself only.";
        }
        String value = inUnit(standard, standard.referenceValue());
        return standard.referenceStandardUncertainty().isEmpty()
                ? value + ", of unknown uncertainty."
                : value + " \u00b1 "
                        + Measure.named(standard.unit())
                                .shownWithUnit(Coverage.expanded(
                                        standard.referenceStandardUncertainty().getAsDouble()))
                        + " (" + Coverage.words() + ").";
    }
}
