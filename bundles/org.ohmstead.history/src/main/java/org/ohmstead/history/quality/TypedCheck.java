// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.testlog.LogEntry;

/**
 * A value of a check standard that somebody read off an instrument and typed in.
 *
 * @param standard which check standard
 * @param value in its unit, finite
 * @param standardUncertainty in the same unit, at least 0, when known
 * @param operator who read it; not blank, since values of several persons are compared
 * @param takenAt when
 */
public record TypedCheck(
        CheckStandard standard, double value, OptionalDouble standardUncertainty, String operator, Instant takenAt) {
    /** Id of the procedure under which the log keeps typed-in values. */
    public static final String PROCEDURE_ID = "org.ohmstead.check-standard";

    /** What stands in the place of a step: it is none of the plan's, so nothing counts as measured by it. */
    public static final String STEP_ID = "check-standard";

    private static final String PROCEDURE_VERSION = "1";
    private static final String STANDARD = "checkStandard";
    private static final String DRIVER_ID = "typed-in";
    private static final String NO_LOAD = "none";

    /** Checks the ranges given above. */
    public TypedCheck {
        Objects.requireNonNull(standard, "standard");
        Objects.requireNonNull(standardUncertainty, "standardUncertainty");
        Objects.requireNonNull(takenAt, "takenAt");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
        if (operator.isBlank()) {
            throw new IllegalArgumentException("operator is blank; it needs a text");
        }
    }

    /**
     * Returns the entry to append to the log. Mode, load and supply volts are those of the standard's step, else the first step's: they
     * say nothing about the value.
     *
     * @param project whose check standard it is
     * @param projectRevision hash that names the state of the project
     * @param softwareVersion version that is kept with it
     */
    public MeasuredFigures figures(Project project, String projectRevision, String softwareVersion) {
        Optional<Step> step =
                project.step(standard.stepId()).or(() -> project.plan().stream().findFirst());
        List<InstrumentUsed> instruments = project.bench().meters().stream()
                .map(meter -> new InstrumentUsed(
                        meter.id(),
                        meter.quantity(),
                        meter.name(),
                        meter.calibratedOn(),
                        meter.isOverdueOn(takenAt.atZone(ZoneOffset.UTC).toLocalDate())))
                .toList();
        return new MeasuredFigures(
                STEP_ID,
                step.map(Step::mode).orElse(Mode.SINGLE),
                step.map(Step::loadId).orElse(NO_LOAD),
                step.map(Step::supplyVolts).orElse(project.bench().supply().highestVolts()),
                takenAt,
                new DriverUsed(DRIVER_ID, softwareVersion, BenchKind.REAL, Map.of()),
                Map.of(STANDARD, standard.id()),
                List.of(new MeasuredFigure(
                        standard.figureId(), standard.channel(), "", value, standard.unit(), standardUncertainty)),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                new Provenance(
                                projectRevision,
                                PROCEDURE_ID,
                                PROCEDURE_VERSION,
                                softwareVersion,
                                operator.strip(),
                                instruments,
                                List.of())
                        .withSpecimen(Specimen.of(project)),
                List.of("A value of the check standard \"" + standard.name()
                        + "\", typed in. Mode, load and supply volts of this entry say nothing about it."));
    }

    /** Returns whether an entry holds a typed-in value of a check standard. */
    static boolean isOf(LogEntry entry, CheckStandard standard) {
        return entry.figures()
                .filter(figures -> figures.measurementId().equals(PROCEDURE_ID))
                .filter(figures -> standard.id().equals(figures.settings().get(STANDARD)))
                .isPresent();
    }
}
