// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;

/** Finds what is wrong in what surrounds the measuring itself: calibrations, verdict rule, price, check standards, shared log. */
final class LabChecks {
    private static final int SOON_DAYS = 30;
    private static final double LARGE_RISK_RATIO = 0.2;
    private static final String CURRENCY = "[A-Z]{3}";

    private LabChecks() {}

    static void checkCalibration(Meter meter, String where, LocalDate today, List<Problem> problems) {
        if (meter.isOverdueOn(today)) {
            problems.add(new Problem(
                    Severity.WARNING,
                    where + ".calibrationDueOn",
                    "The calibration of \"" + meter.name() + "\" ran out on "
                            + meter.calibrationDueOn().orElseThrow() + ".",
                    "Have it calibrated; until then its readings are marked as overdue."));
        } else if (meter.calibrationDueOn()
                .filter(due -> ChronoUnit.DAYS.between(today, due) <= SOON_DAYS)
                .isPresent()) {
            problems.add(new Problem(
                    Severity.NOTE,
                    where + ".calibrationDueOn",
                    "The calibration of \"" + meter.name() + "\" runs out on "
                            + meter.calibrationDueOn().get() + ", " + inDays(today, meter) + ".",
                    "Have it calibrated before that day; readings of later days are marked as overdue."));
        }
        if (meter.stability().driftRatioPerYear() > 0 && meter.calibratedOn().isEmpty()) {
            problems.add(new Problem(
                    Severity.WARNING,
                    where + ".calibratedOn",
                    "A drift is stated for \"" + meter.name() + "\", but not the day from which it counts.",
                    "Enter the day of its last calibration; until then the drift plays no part."));
        }
    }

    private static String inDays(LocalDate today, Meter meter) {
        long days = ChronoUnit.DAYS.between(today, meter.calibrationDueOn().orElseThrow());
        return days == 0 ? "today" : days == 1 ? "tomorrow" : "in " + days + " days";
    }

    static void checkPrice(Project project, List<Problem> problems) {
        project.amplifier().price().ifPresent(price -> {
            if (price.amount() == 0) {
                problems.add(new Problem(
                        Severity.WARNING,
                        "$.amplifier.price.amount",
                        "The amplifier's price is 0, which gives no price per watt.",
                        "Enter what it cost, or take the price out."));
            }
            if (!price.currency().matches(CURRENCY)) {
                problems.add(
                        new Problem(
                                Severity.WARNING,
                                "$.amplifier.price.currency",
                                "The currency \"" + price.currency() + "\" is not written with three capital letters.",
                                "Write it as in ISO 4217, for example EUR or USD, so that prices can be put beside each other."));
            }
        });
    }

    static void checkVerdictRule(Project project, List<Problem> problems) {
        project.sheet()
                .verdictRule()
                .filter(rule -> rule.kind() != VerdictKind.SIMPLE_ACCEPTANCE && rule.riskRatio() > LARGE_RISK_RATIO)
                .ifPresent(rule -> problems.add(new Problem(
                        Severity.WARNING,
                        "$.sheet.verdictRule.riskRatio",
                        String.format(
                                Locale.ROOT,
                                "The verdict rule lets a decision be wrong with a chance of up to %.3g %%.",
                                100 * rule.riskRatio()),
                        "Choose a smaller risk, usually 5 %, or simple acceptance when no risk is to be stated.")));
    }

    static void checkStandards(Project project, List<Problem> problems) {
        for (int index = 0; index < project.checkStandards().size(); index++) {
            CheckStandard standard = project.checkStandards().get(index);
            String where = "$.checkStandards[" + index + "]";
            if (!standard.isTypedIn() && project.step(standard.stepId()).isEmpty()) {
                problems.add(new Problem(
                        Severity.WARNING,
                        where + ".stepId",
                        "The check standard \"" + standard.id() + "\" names the step \"" + standard.stepId()
                                + "\", which the plan does not have.",
                        "Use the id of a step of the plan, or leave it empty to type the values in."));
            }
            if (standard.referenceStandardUncertainty().isPresent()
                    && standard.referenceValue().isEmpty()) {
                problems.add(new Problem(
                        Severity.WARNING,
                        where + ".referenceValue",
                        "The check standard \"" + standard.id()
                                + "\" has an uncertainty of its true value, but not the value.",
                        "Enter the value that its certificate states, or take the uncertainty out."));
            }
        }
    }

    static void checkSharedLog(Project project, List<Problem> problems) {
        if (project.sharedLog().isEmpty()) {
            return;
        }
        SharedLog shared = project.sharedLog().get();
        wanted(shared.host(), "host", "The server of the shared log is not named.", problems);
        wanted(shared.database(), "database", "The database of the shared log is not named.", problems);
        wanted(shared.bench(), "bench", "This bench has no name in the shared log.", problems);
        if (shared.host().contains("@") || shared.host().contains("/")) {
            tooMuch("host", "The server of the shared log is more than a name or an address.", problems);
        }
        if (shared.database().contains("=")) {
            tooMuch("database", "The database of the shared log is more than a name.", problems);
        }
    }

    private static void tooMuch(String field, String what, List<Problem> problems) {
        problems.add(new Problem(
                Severity.ERROR,
                "$.sharedLog." + field,
                what,
                "Leave only the name here. User name and password never belong in the project;"
                        + " they come from the environment or a password file."));
    }

    private static void wanted(String text, String field, String what, List<Problem> problems) {
        if (text.isBlank()) {
            problems.add(new Problem(
                    Severity.WARNING,
                    "$.sharedLog." + field,
                    what,
                    "Fill it in, or take the shared log out; until then nothing is handed over."));
        }
    }
}
