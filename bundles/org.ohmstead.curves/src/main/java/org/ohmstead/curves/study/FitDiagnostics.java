// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.internal.ResidualTests;
import org.ohmstead.units.text.Messages;

/**
 * How well a curve and its readings go together.
 *
 * @param residuals one for each reading, in the order of the readings
 * @param conditionNumber of the weighted Jacobian with columns of equal length: from some thousands on the readings
 *     hardly tell the values apart
 * @param runs how many stretches of equal sign the residuals have, sorted by supply voltage
 * @param runsDeviation how many standard deviations that is above (below: negative) what chance gives; absent when all
 *     have one sign
 * @param andersonDarling the modified statistic of Anderson and Darling of the studentised residuals; absent with
 *     fewer than 8
 */
public record FitDiagnostics(
        List<ResidualPoint> residuals,
        double conditionNumber,
        int runs,
        OptionalDouble runsDeviation,
        OptionalDouble andersonDarling) {
    private static final Messages TEXTS = Messages.of(FitDiagnostics.class);

    /** Above this the residuals are not normal with 95 % confidence (R. B. D'Agostino, M. A. Stephens, 1986). */
    public static final double NORMAL_UP_TO = 0.752;

    /** Fewer runs than so many standard deviations below the expected show a bent curve (one-sided 5 %). */
    public static final double RUNS_FROM = -1.645;

    /** Copies the list. */
    public FitDiagnostics {
        residuals = List.copyOf(residuals);
    }

    static FitDiagnostics of(List<ResidualPoint> residuals, double conditionNumber) {
        double[] sorted = residuals.stream()
                .sorted(Comparator.comparingDouble(residual -> residual.point().supplyVolts()))
                .mapToDouble(ResidualPoint::residualWatts)
                .toArray();
        double[] studentised =
                residuals.stream().mapToDouble(ResidualPoint::studentised).toArray();
        return new FitDiagnostics(
                residuals,
                conditionNumber,
                ResidualTests.runs(sorted),
                ResidualTests.runsDeviation(sorted),
                ResidualTests.andersonDarling(studentised));
    }

    /** Returns the readings that lie so far off that chance hardly explains it, the farthest first. */
    public List<ResidualPoint> outliers() {
        return residuals.stream()
                .filter(ResidualPoint::outlier)
                .sorted(Comparator.comparingDouble(residual -> -Math.abs(residual.studentised())))
                .toList();
    }

    /** Returns what is remarkable about the residuals, in whole sentences; empty when nothing is. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        for (ResidualPoint outlier : outliers()) {
            sentences.add(TEXTS.text(
                    "residual.outlier",
                    outlier.point().inWords(),
                    StudyWords.say("%.1f", 100 * Math.abs(outlier.residualWatts()) / outlier.fittedWatts()),
                    TEXTS.text(outlier.residualWatts() > 0 ? "words.above" : "words.below"),
                    StudyWords.say("%.1f", Math.abs(outlier.studentised()))));
        }
        if (runsDeviation.isPresent() && runsDeviation.getAsDouble() < RUNS_FROM) {
            sentences.add(TEXTS.text("residual.runs"));
        }
        if (andersonDarling.isPresent() && andersonDarling.getAsDouble() > NORMAL_UP_TO) {
            sentences.add(TEXTS.text("residual.normal"));
        }
        return List.copyOf(sentences);
    }
}
