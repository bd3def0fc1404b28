// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** Finds what is wrong in what surrounds the measuring itself: calibrations, verdict rule, price, check standards, shared log. */
final class LabChecks {
    private static final int SOON_DAYS = 30;
    private static final double LARGE_RISK_RATIO = 0.2;
    private static final String CURRENCY = "[A-Z]{3}";

    private LabChecks() {}

    static void checkCalibration(Meter meter, String where, LocalDate today, List<Problem> problems) {
        if (meter.isOverdueOn(today)) {
            problems.add(Problems.of(
                    Severity.WARNING,
                    where + ".calibrationDueOn",
                    "calibration.over",
                    meter.name(),
                    meter.calibrationDueOn().orElseThrow().toString()));
        } else if (meter.calibrationDueOn()
                .filter(due -> ChronoUnit.DAYS.between(today, due) <= SOON_DAYS)
                .isPresent()) {
            problems.add(Problems.of(
                    Severity.NOTE,
                    where + ".calibrationDueOn",
                    "calibration.soon",
                    meter.name(),
                    meter.calibrationDueOn().get().toString(),
                    days(today, meter)));
        }
        if (meter.stability().driftRatioPerYear() > 0 && meter.calibratedOn().isEmpty()) {
            problems.add(Problems.of(Severity.WARNING, where + ".calibratedOn", "drift.noDay", meter.name()));
        }
    }

    private static long days(LocalDate today, Meter meter) {
        return ChronoUnit.DAYS.between(today, meter.calibrationDueOn().orElseThrow());
    }

    static void checkPrice(Project project, List<Problem> problems) {
        project.amplifier().price().ifPresent(price -> {
            if (price.amount() == 0) {
                problems.add(Problems.of(Severity.WARNING, "$.amplifier.price.amount", "price.zero"));
            }
            if (!price.currency().matches(CURRENCY)) {
                problems.add(Problems.of(
                        Severity.WARNING, "$.amplifier.price.currency", "price.currency", price.currency()));
            }
        });
    }

    static void checkVerdictRule(Project project, List<Problem> problems) {
        project.sheet()
                .verdictRule()
                .filter(rule -> rule.kind() != VerdictKind.SIMPLE_ACCEPTANCE && rule.riskRatio() > LARGE_RISK_RATIO)
                .ifPresent(rule -> problems.add(Problems.of(
                        Severity.WARNING,
                        "$.sheet.verdictRule.riskRatio",
                        "rule.risk",
                        Problems.figure("%.3g", 100 * rule.riskRatio()))));
    }

    static void checkStandards(Project project, List<Problem> problems) {
        for (int index = 0; index < project.checkStandards().size(); index++) {
            CheckStandard standard = project.checkStandards().get(index);
            String where = "$.checkStandards[" + index + "]";
            if (!standard.isTypedIn() && project.step(standard.stepId()).isEmpty()) {
                problems.add(Problems.of(
                        Severity.WARNING, where + ".stepId", "standard.step", standard.id(), standard.stepId()));
            }
            if (standard.referenceStandardUncertainty().isPresent()
                    && standard.referenceValue().isEmpty()) {
                problems.add(
                        Problems.of(Severity.WARNING, where + ".referenceValue", "standard.reference", standard.id()));
            }
        }
    }

    static void checkSharedLog(Project project, List<Problem> problems) {
        if (project.sharedLog().isEmpty()) {
            return;
        }
        SharedLog shared = project.sharedLog().get();
        wanted(shared.host(), "host", problems);
        wanted(shared.database(), "database", problems);
        wanted(shared.bench(), "bench", problems);
        if (shared.host().contains("@") || shared.host().contains("/")) {
            problems.add(Problems.of(Severity.ERROR, "$.sharedLog.host", "shared.more.host"));
        }
        if (shared.database().contains("=")) {
            problems.add(Problems.of(Severity.ERROR, "$.sharedLog.database", "shared.more.database"));
        }
    }

    private static void wanted(String text, String field, List<Problem> problems) {
        if (text.isBlank()) {
            problems.add(Problems.of(Severity.WARNING, "$.sharedLog." + field, "shared.blank." + field));
        }
    }
}
