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
        DISTORTION_LIMIT("distortion limit"),
        CLIPPING_ONSET("clipping onset"),
        FIXED_LEVEL("fixed level");

        private final String words;

        EndKind(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }

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
        return TableSpec.of("steps", "step", "steps", columns(project))
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
                Columns.requiredText("id", "Id", Step::id, Step::withId).withWidth(24),
                Columns.choice("mode", "Mode", List.of(Mode.values()), Words::of, Step::mode, Step::withMode)
                        .withWidth(10),
                Columns.choiceFrom(
                                "loadId",
                                "Load",
                                (Step step) -> loadIds(project.get()),
                                id -> id,
                                Step::loadId,
                                Step::withLoadId)
                        .withWidth(12),
                lowLoad(project),
                Columns.quantity(
                        "supplyVolts", "Supply", Measure.of(Unit.VOLT), Step::supplyVolts, Step::withSupplyVolts));
    }

    private static List<Column<Step>> stimulusColumns() {
        return List.of(
                Columns.<Step, PowerKind>choice(
                                "stimulus.kind",
                                "Stimulus",
                                List.of(PowerKind.values()),
                                Words::of,
                                step -> step.stimulus().powerKind(),
                                StepTable::withKind)
                        .withWidth(13),
                Columns.quantity(
                        "stimulus.frequencyHz",
                        "Tone",
                        Measure.of(Unit.HERTZ),
                        step -> step.stimulus().frequencyHz(),
                        (step, value) -> step.withStimulus(step.stimulus().withFrequencyHz(value))),
                burst(
                        "stimulus.onSeconds",
                        "Burst",
                        Measure.milli(Unit.SECOND),
                        Stimulus.ToneBurst::onSeconds,
                        StepTable::withOn),
                burst(
                        "stimulus.periodSeconds",
                        "Every",
                        Measure.milli(Unit.SECOND),
                        Stimulus.ToneBurst::periodSeconds,
                        StepTable::withPeriod),
                burst(
                        "stimulus.lowLevelDb",
                        "Between",
                        Measure.of(Unit.DECIBEL),
                        Stimulus.ToneBurst::lowLevelDb,
                        StepTable::withLowLevel));
    }

    private static List<Column<Step>> endPointColumns() {
        return List.of(
                Columns.<Step, EndKind>choice(
                                "endPoint.kind",
                                "End point",
                                List.of(EndKind.values()),
                                EndKind::words,
                                step -> EndKind.of(step.endPoint()),
                                StepTable::withEndKind)
                        .withWidth(17),
                endNumber("endPoint.ratio", "Limit", Measure.percentOfOne()),
                endNumber("endPoint.driveDb", "Level", Measure.of(Unit.DECIBEL)),
                Columns.<Step, String>choiceFrom(
                                "endPoint.measure",
                                "Of",
                                StepTable::measureWords,
                                word -> word,
                                StepTable::measureWord,
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
                        "Low load",
                        Step::belowLowestLoadConfirmed,
                        Step::withBelowLowestLoadConfirmed)
                .withWidth(11)
                .withShown(step -> isLow(project, step) || step.belowLowestLoadConfirmed()
                        ? step.belowLowestLoadConfirmed() ? CellEdit.YES : CellEdit.NO
                        : NONE)
                .withProblem(step -> isLow(project, step) && step.belowLowestLoadConfirmed()
                        ? Optional.of(new Mark(
                                Severity.NOTE, "Confirmed: works below the lowest load that the maker allows."))
                        : Optional.empty())
                .withHover(step -> isLow(project, step)
                        ? "This load is below the lowest that the maker allows and may destroy the output stage. Confirm only"
                                + " what you mean to risk."
                        : "The load is one that the maker allows; nothing to confirm.");
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

    private static List<String> measureWords(Step step) {
        return step.endPoint() instanceof EndPoint.DistortionLimit
                ? List.of(DistortionMeasure.values()).stream().map(Words::of).toList()
                : List.of(NONE);
    }

    private static String measureWord(Step step) {
        return step.endPoint() instanceof EndPoint.DistortionLimit limit ? Words.of(limit.measure()) : NONE;
    }

    private static Step withMeasure(Step step, String word) {
        if (word.equals(NONE)) {
            return step;
        }
        DistortionMeasure measure = List.of(DistortionMeasure.values()).stream()
                .filter(each -> Words.of(each).equals(word))
                .findFirst()
                .orElseThrow();
        if (step.endPoint() instanceof EndPoint.DistortionLimit limit) {
            return step.withEndPoint(new EndPoint.DistortionLimit(limit.ratio(), measure));
        }
        throw new IllegalArgumentException(
                "Only a distortion limit is about a distortion. Choose it as the end point first.");
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
            String needed = (ratio ? EndKind.DISTORTION_LIMIT : EndKind.FIXED_LEVEL).words();
            throw new IllegalArgumentException(
                    value.isPresent()
                            ? "Only a " + needed + " has this number. Choose it as the end point first."
                            : "A " + needed + " needs this number.");
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
                        double given = value.orElseThrow(
                                () -> new IllegalArgumentException("A burst needs this number; it must not be empty."));
                        return step.withStimulus(with.apply(burst, given));
                    }
                    if (value.isEmpty()) {
                        return step;
                    }
                    throw new IllegalArgumentException(
                            "Only a burst has this number. Choose burst as the stimulus first.");
                });
    }

    private static Stimulus.ToneBurst withOn(Stimulus.ToneBurst burst, double onSeconds) {
        if (onSeconds >= burst.periodSeconds()) {
            throw new IllegalArgumentException("It must be shorter than the time from burst to burst.");
        }
        return burst.withOnSeconds(onSeconds);
    }

    private static Stimulus.ToneBurst withPeriod(Stimulus.ToneBurst burst, double periodSeconds) {
        if (periodSeconds <= burst.onSeconds()) {
            throw new IllegalArgumentException("It must be longer than the burst itself.");
        }
        return burst.withPeriodSeconds(periodSeconds);
    }

    private static Stimulus.ToneBurst withLowLevel(Stimulus.ToneBurst burst, double levelDb) {
        if (levelDb > 0 || levelDb < LEAST_LEVEL_DB) {
            throw new IllegalArgumentException("It must lie between -200 dB and 0 dB.");
        }
        return burst.withLowLevelDb(levelDb);
    }
}
