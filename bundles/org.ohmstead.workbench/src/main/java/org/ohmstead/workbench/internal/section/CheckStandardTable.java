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
        return TableSpec.of("checkstandards", Texts.text("table.check"), Texts.text("table.checks"), columns)
                .withEditNames(Texts.edits("check"))
                .withNewRow(CheckStandardTable::fresh)
                .withDuplicate((standard, rows) -> standard.withId(FreshIds.freeOf(
                        standard.id(), rows.stream().map(CheckStandard::id).toList())))
                .withKey(CheckStandard::id);
    }

    private static CheckStandard fresh(List<CheckStandard> rows) {
        return new CheckStandard(
                FreshIds.numbered("check", rows.stream().map(CheckStandard::id).toList()),
                Texts.text("check.new"),
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
                Columns.requiredText("id", Texts.text("table.id"), CheckStandard::id, CheckStandard::withId)
                        .withWidth(12),
                Columns.requiredText("name", Texts.text("table.name"), CheckStandard::name, CheckStandard::withName)
                        .withWidth(34),
                Columns.<CheckStandard, String>choiceFrom(
                                "stepId",
                                Texts.text("check.source"),
                                standard -> sources(project.get()),
                                step -> step.isEmpty() ? Texts.text("check.source.typed") : step,
                                CheckStandard::stepId,
                                CheckStandard::withStepId)
                        .withHover(standard -> standard.isTypedIn()
                                ? Texts.text("check.source.hover.typed")
                                : Texts.text("check.source.hover.step", standard.stepId()))
                        .withWidth(20),
                Columns.requiredText(
                                "figureId",
                                Texts.text("check.figure"),
                                CheckStandard::figureId,
                                CheckStandard::withFigureId)
                        .withHover(standard -> Texts.text("check.figure.hover"))
                        .withWidth(14),
                Columns.text("channel", Texts.text("check.channel"), CheckStandard::channel, CheckStandard::withChannel)
                        .withHover(standard -> Texts.text("check.channel.hover"))
                        .withWidth(10),
                Columns.text("unit", Texts.text("check.unit"), CheckStandard::unit, CheckStandard::withUnit)
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
                                Texts.text("check.reference"),
                                plain,
                                CheckStandard::referenceValue,
                                CheckStandard::withReferenceValue)
                        .withShown(standard -> inUnit(standard, standard.referenceValue()))
                        .withHover(CheckStandardTable::reference)
                        .withWidth(13),
                Columns.<CheckStandard>optionalQuantity(
                                "referenceStandardUncertainty",
                                Texts.text("check.uncertainty"),
                                plain,
                                CheckStandard::referenceStandardUncertainty,
                                CheckStandard::withReferenceStandardUncertainty)
                        .withShown(standard -> inUnit(standard, standard.referenceStandardUncertainty()))
                        .withHover(CheckStandardTable::reference),
                Columns.integer(
                                "baselineCount",
                                Texts.text("check.baseline"),
                                LEAST_BASELINE,
                                MOST_BASELINE,
                                CheckStandard::baselineCount,
                                CheckStandard::withBaselineCount)
                        .withHover(standard -> Texts.text("check.baseline.hover")),
                Columns.percent(
                                "significanceRatio",
                                Texts.text("check.alarms"),
                                CheckStandard::significanceRatio,
                                CheckStandard::withSignificanceRatio)
                        .withHover(standard -> Texts.text("check.alarms.hover")),
                Columns.<CheckStandard>integer(
                                "everyDays",
                                Texts.text("check.every"),
                                0,
                                MOST_DAYS,
                                CheckStandard::everyDays,
                                CheckStandard::withEveryDays)
                        .withShown(CheckStandardTable::every)
                        .withHover(standard -> Texts.text("check.every.hover"))
                        .withWidth(12));
    }

    private static String inUnit(CheckStandard standard, OptionalDouble value) {
        return value.isEmpty() ? NONE : Measure.named(standard.unit()).shownWithUnit(value.getAsDouble());
    }

    private static String every(CheckStandard standard) {
        return standard.everyDays() == 0 ? NONE : Texts.counted("check.every", standard.everyDays());
    }

    private static String reference(CheckStandard standard) {
        if (standard.referenceValue().isEmpty()) {
            return Texts.text("check.reference.none");
        }
        String value = inUnit(standard, standard.referenceValue());
        return standard.referenceStandardUncertainty().isEmpty()
                ? Texts.text("check.reference.alone", value)
                : Texts.text(
                        "check.reference.both",
                        value,
                        Measure.named(standard.unit())
                                .shownWithUnit(Coverage.expanded(
                                        standard.referenceStandardUncertainty().getAsDouble())),
                        Coverage.words());
    }
}
