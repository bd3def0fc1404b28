// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.CellEdit;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.Mark;
import org.ohmstead.workbench.table.TableSpec;

/** The table of the plan's steps. */
final class StepTable {
    /** Burst with which a step becomes one: 20 ms every 500 ms, 20 dB lower between. */
    static final Stimulus.ToneBurst USUAL_BURST = new Stimulus.ToneBurst(1000, 0.02, 0.5, -20);

    /** The end point that is meant unless another is said. */
    static final EndPoint USUAL_END = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);

    private static final double LEAST_LEVEL_DB = -200;
    private static final String NONE = "\u2013";

    private StepTable() {}

    /** What ends the search, without its numbers. */
    enum EndKind {
        DISTORTION_LIMIT,
        CLIPPING_ONSET,
        FIXED_LEVEL;

        static EndKind of(EndPoint endPoint) {
            if (endPoint instanceof EndPoint.DistortionLimit) {
                return DISTORTION_LIMIT;
            }
            return endPoint instanceof EndPoint.FixedLevel ? FIXED_LEVEL : CLIPPING_ONSET;
        }

        EndPoint usual() {
            return switch (this) {
                case DISTORTION_LIMIT -> USUAL_END;
                case CLIPPING_ONSET -> new EndPoint.ClippingOnset();
                case FIXED_LEVEL -> new EndPoint.FixedLevel(-10);
            };
        }
    }

    static TableSpec<Step> spec(Supplier<Optional<Project>> project) {
        return TableSpec.of("steps", Texts.text("table.step"), Texts.text("table.steps"), columns(project))
                .withEditNames(Texts.edits("step"))
                .withNewRow(rows -> newStep(rows, project.get()))
                .withDuplicate((step, rows) -> step.withId(
                        FreshIds.freeOf(step.id(), rows.stream().map(Step::id).toList())))
                .withKey(Step::id);
    }

    private static Step newStep(List<Step> rows, Optional<Project> project) {
        String load = project.flatMap(shown -> shown.loads().stream().findFirst())
                .map(BenchLoad::id)
                .orElse("4ohm");
        String id = FreshIds.numbered("step", rows.stream().map(Step::id).toList());
        return new Step(id, Mode.STEREO, load, 14.4, new Stimulus.ContinuousSine(1000), USUAL_END, false);
    }

    private static List<Column<Step>> columns(Supplier<Optional<Project>> project) {
        List<Column<Step>> columns = new ArrayList<>(whatIsConnected(project));
        columns.addAll(stimulusColumns());
        columns.addAll(endPointColumns());
        return columns;
    }

    private static List<Column<Step>> whatIsConnected(Supplier<Optional<Project>> project) {
        return List.of(
                Columns.requiredText("id", Texts.text("table.id"), Step::id, Step::withId)
                        .withWidth(24),
                Columns.choice(
                                "mode",
                                Texts.text("step.mode"),
                                List.of(Mode.values()),
                                Words::of,
                                Step::mode,
                                Step::withMode)
                        .withWidth(10),
                Columns.choiceFrom(
                                "loadId",
                                Texts.text("step.load"),
                                (Step step) -> loadIds(project.get()),
                                id -> id,
                                Step::loadId,
                                Step::withLoadId)
                        .withWidth(12),
                lowLoad(project),
                Columns.quantity(
                        "supplyVolts",
                        Texts.text("step.supply"),
                        Measure.of(Unit.VOLT),
                        Step::supplyVolts,
                        Step::withSupplyVolts));
    }

    private static List<Column<Step>> stimulusColumns() {
        return List.of(
                Columns.<Step, PowerKind>choice(
                                "stimulus.kind",
                                Texts.text("step.stimulus"),
                                List.of(PowerKind.values()),
                                Words::of,
                                step -> step.stimulus().powerKind(),
                                StepTable::withKind)
                        .withWidth(13),
                Columns.quantity(
                        "stimulus.frequencyHz",
                        Texts.text("step.tone"),
                        Measure.of(Unit.HERTZ),
                        step -> step.stimulus().frequencyHz(),
                        (step, value) -> step.withStimulus(step.stimulus().withFrequencyHz(value))),
                burst(
                        "stimulus.onSeconds",
                        Texts.text("step.burst"),
                        Measure.milli(Unit.SECOND),
                        Stimulus.ToneBurst::onSeconds,
                        StepTable::withOn),
                burst(
                        "stimulus.periodSeconds",
                        Texts.text("step.every"),
                        Measure.milli(Unit.SECOND),
                        Stimulus.ToneBurst::periodSeconds,
                        StepTable::withPeriod),
                burst(
                        "stimulus.lowLevelDb",
                        Texts.text("step.between"),
                        Measure.of(Unit.DECIBEL),
                        Stimulus.ToneBurst::lowLevelDb,
                        StepTable::withLowLevel));
    }

    private static List<Column<Step>> endPointColumns() {
        return List.of(
                Columns.<Step, EndKind>choice(
                                "endPoint.kind",
                                Texts.text("step.end"),
                                List.of(EndKind.values()),
                                Words::of,
                                step -> EndKind.of(step.endPoint()),
                                StepTable::withEndKind)
                        .withWidth(17),
                endNumber("endPoint.ratio", Texts.text("step.limit"), Measure.percentOfOne()),
                endNumber("endPoint.driveDb", Texts.text("step.level"), Measure.of(Unit.DECIBEL)),
                Columns.<Step, Optional<DistortionMeasure>>choiceFrom(
                                "endPoint.measure",
                                Texts.text("step.measure"),
                                StepTable::measures,
                                measure -> measure.map(Words::of).orElse(NONE),
                                StepTable::measure,
                                StepTable::withMeasure)
                        .withWidth(10));
    }

    private static List<String> loadIds(Optional<Project> project) {
        return project.map(shown -> shown.loads().stream().map(BenchLoad::id).toList())
                .orElse(List.of());
    }

    private static Column<Step> lowLoad(Supplier<Optional<Project>> project) {
        return Columns.<Step>check(
                        "belowLowestLoadConfirmed",
                        Texts.text("step.low"),
                        Step::belowLowestLoadConfirmed,
                        Step::withBelowLowestLoadConfirmed)
                .withWidth(11)
                .withShown(step -> isLow(project, step) || step.belowLowestLoadConfirmed()
                        ? step.belowLowestLoadConfirmed() ? CellEdit.yes() : CellEdit.no()
                        : NONE)
                .withProblem(step -> isLow(project, step) && step.belowLowestLoadConfirmed()
                        ? Optional.of(new Mark(Severity.NOTE, Texts.text("step.low.confirmed")))
                        : Optional.empty())
                .withHover(
                        step -> isLow(project, step) ? Texts.text("step.low.hover") : Texts.text("step.low.allowed"));
    }

    private static boolean isLow(Supplier<Optional<Project>> project, Step step) {
        return project.get()
                .map(shown -> PlanMatrix.belowLowest(shown, step.mode(), step.loadId()))
                .orElse(false);
    }

    private static Step withKind(Step step, PowerKind kind) {
        if (step.stimulus().powerKind() == kind) {
            return step;
        }
        double frequencyHz = step.stimulus().frequencyHz();
        return step.withStimulus(
                kind == PowerKind.BURST
                        ? USUAL_BURST.withFrequencyHz(frequencyHz)
                        : new Stimulus.ContinuousSine(frequencyHz));
    }

    private static Step withEndKind(Step step, EndKind kind) {
        return EndKind.of(step.endPoint()) == kind ? step : step.withEndPoint(kind.usual());
    }

    private static List<Optional<DistortionMeasure>> measures(Step step) {
        return step.endPoint() instanceof EndPoint.DistortionLimit
                ? Stream.of(DistortionMeasure.values()).map(Optional::of).toList()
                : List.of(Optional.empty());
    }

    private static Optional<DistortionMeasure> measure(Step step) {
        return step.endPoint() instanceof EndPoint.DistortionLimit limit
                ? Optional.of(limit.measure())
                : Optional.empty();
    }

    private static Step withMeasure(Step step, Optional<DistortionMeasure> measure) {
        if (measure.isEmpty()) {
            return step;
        }
        if (step.endPoint() instanceof EndPoint.DistortionLimit limit) {
            return step.withEndPoint(new EndPoint.DistortionLimit(limit.ratio(), measure.get()));
        }
        throw new IllegalArgumentException(Texts.text("step.measure.only"));
    }

    private static Column<Step> endNumber(String id, String header, Measure measure) {
        return Columns.<Step>optionalQuantity(id, header, measure, endValue(id), (step, value) -> {
            if (value.equals(endValue(id).apply(step))) {
                return step;
            }
            boolean ratio = id.endsWith("ratio");
            if (ratio && step.endPoint() instanceof EndPoint.DistortionLimit limit && value.isPresent()) {
                return step.withEndPoint(new EndPoint.DistortionLimit(value.getAsDouble(), limit.measure()));
            }
            if (!ratio && step.endPoint() instanceof EndPoint.FixedLevel && value.isPresent()) {
                return step.withEndPoint(new EndPoint.FixedLevel(value.getAsDouble()));
            }
            String needed = ratio ? "step.limit" : "step.level";
            throw new IllegalArgumentException(Texts.text(needed + (value.isPresent() ? ".only" : ".needed")));
        });
    }

    private static Function<Step, OptionalDouble> endValue(String id) {
        return step -> {
            if (id.endsWith("ratio") && step.endPoint() instanceof EndPoint.DistortionLimit limit) {
                return OptionalDouble.of(limit.ratio());
            }
            if (id.endsWith("driveDb") && step.endPoint() instanceof EndPoint.FixedLevel level) {
                return OptionalDouble.of(level.driveDb());
            }
            return OptionalDouble.empty();
        };
    }

    private static Column<Step> burst(
            String id,
            String header,
            Measure measure,
            ToDoubleFunction<Stimulus.ToneBurst> get,
            BiFunction<Stimulus.ToneBurst, Double, Stimulus.ToneBurst> with) {
        return Columns.<Step>optionalQuantity(
                id,
                header,
                measure,
                step -> step.stimulus() instanceof Stimulus.ToneBurst burst
                        ? OptionalDouble.of(get.applyAsDouble(burst))
                        : OptionalDouble.empty(),
                (step, value) -> {
                    if (step.stimulus() instanceof Stimulus.ToneBurst burst) {
                        double given =
                                value.orElseThrow(() -> new IllegalArgumentException(Texts.text("step.burst.needed")));
                        return step.withStimulus(with.apply(burst, given));
                    }
                    if (value.isEmpty()) {
                        return step;
                    }
                    throw new IllegalArgumentException(Texts.text("step.burst.only"));
                });
    }

    private static Stimulus.ToneBurst withOn(Stimulus.ToneBurst burst, double onSeconds) {
        if (onSeconds >= burst.periodSeconds()) {
            throw new IllegalArgumentException(Texts.text("step.burst.long"));
        }
        return burst.withOnSeconds(onSeconds);
    }

    private static Stimulus.ToneBurst withPeriod(Stimulus.ToneBurst burst, double periodSeconds) {
        if (periodSeconds <= burst.onSeconds()) {
            throw new IllegalArgumentException(Texts.text("step.every.short"));
        }
        return burst.withPeriodSeconds(periodSeconds);
    }

    private static Stimulus.ToneBurst withLowLevel(Stimulus.ToneBurst burst, double levelDb) {
        if (levelDb > 0 || levelDb < LEAST_LEVEL_DB) {
            throw new IllegalArgumentException(Texts.text("step.between.refused"));
        }
        return burst.withLowLevelDb(levelDb);
    }
}
