// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ohmstead.curves.study.FittedParameter;
import org.ohmstead.curves.study.NaiveScaling;
import org.ohmstead.curves.study.NormalisedTable;
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.curves.study.ResidualPoint;
import org.ohmstead.metrology.Covariance;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** What a joint study says, as tables. */
final class StudySheets {
    private static final Messages TEXTS = Messages.of(StudySheets.class);

    private static final String NONE = "\u2013";

    private StudySheets() {}

    /** Returns the values found with their uncertainties and how they hang together. */
    static Sheet parameters(PowerStudy study, double confidence) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header(TEXTS.text("parameters.parameter"), false, TEXTS.text("parameters.parameterHint")),
                new Sheet.Header(
                        TEXTS.text("parameters.value"), true, TEXTS.text("parameters.valueHint", Words.uncertainty())),
                new Sheet.Header(TEXTS.text("parameters.unit"), false, TEXTS.text("parameters.unitHint")),
                new Sheet.Header(TEXTS.text("parameters.note"), false, TEXTS.text("parameters.noteHint")),
                new Sheet.Header(
                        TEXTS.text("parameters.correlation"), false, TEXTS.text("parameters.correlationHint")));
        List<FittedParameter> found = study.fit().parameters();
        Covariance covariance = study.fit().covariance();
        List<Sheet.Row> rows = new ArrayList<>();
        for (int row = 0; row < found.size(); row++) {
            rows.add(row(found, row, covariance, confidence));
        }
        return new Sheet(headers, rows);
    }

    private static Sheet.Row row(List<FittedParameter> found, int row, Covariance covariance, double confidence) {
        FittedParameter parameter = found.get(row);
        Estimate estimate = parameter.estimate();
        double half = Coverage.expanded(estimate.standardUncertainty());
        List<String> correlations = new ArrayList<>();
        for (int other = 0; other < found.size(); other++) {
            boolean both = covariance.standardUncertainty(row) > 0 && covariance.standardUncertainty(other) > 0;
            if (other != row && both) {
                correlations.add(TEXTS.text(
                        "parameters.with",
                        Figures.fixed(covariance.correlation(row, other), 2),
                        found.get(other).parameter().words()));
            }
        }
        String note = parameter.atBound() ? TEXTS.text("parameters.atBound") : freedom(estimate);
        String text = half > 0 ? Figures.stated(estimate.value(), half).text() : Numbers.digits(estimate.value(), 4);
        CoverageInterval interval = estimate.interval(confidence);
        String hover = half > 0
                ? TEXTS.text(
                        "parameters.interval",
                        Numbers.percent(confidence),
                        Numbers.digits(interval.lower(), 4),
                        Numbers.digits(interval.upper(), 4),
                        unit(parameter))
                : "";
        String together = String.join("; ", correlations);
        return new Sheet.Row(List.of(
                Sheet.Cell.of(parameter.parameter().words()),
                new Sheet.Cell(text, hover),
                Sheet.Cell.of(unit(parameter)),
                new Sheet.Cell(note, note),
                new Sheet.Cell(together, together)));
    }

    private static String unit(FittedParameter parameter) {
        return parameter.parameter().unit().replace("ohm", "\u03a9");
    }

    private static String freedom(Estimate estimate) {
        return Double.isFinite(estimate.degreesOfFreedom())
                ? TEXTS.text("parameters.scatter", Numbers.shown(estimate.degreesOfFreedom()))
                : TEXTS.text("parameters.readings");
    }

    /** Returns the power of each load at some supply volts. */
    static Sheet normalised(PowerStudy study, List<Double> supplyVolts, double confidence) {
        List<Sheet.Header> headers = new ArrayList<>();
        headers.add(new Sheet.Header(TEXTS.text("normalised.load"), false, TEXTS.text("normalised.loadHint")));
        for (double each : supplyVolts) {
            headers.add(new Sheet.Header(
                    TEXTS.text("normalised.wattsAt", Figures.volts(each)),
                    true,
                    TEXTS.text("normalised.powerHint", Words.uncertainty())));
        }
        headers.add(new Sheet.Header(TEXTS.text("parameters.note"), false, TEXTS.text("normalised.noteHint")));
        double from = Difference.supplyVolts(study);
        List<Sheet.Row> rows = new ArrayList<>();
        for (NormalisedTable.Row row : NormalisedTable.of(study, supplyVolts).rows()) {
            List<Sheet.Cell> cells = new ArrayList<>();
            cells.add(Sheet.Cell.of(Words.load(row.load())));
            for (PowerPrediction each : row.predictions()) {
                Sheet.Cell cell = power(each, confidence);
                String naive = each instanceof PowerPrediction.Predicted at
                        ? naive(NaiveScaling.of(
                                study,
                                from,
                                at.supplyVolts(),
                                row.load().loadOhms(),
                                row.load().mode()))
                        : "";
                cells.add(new Sheet.Cell(cell.text(), cell.hover() + naive));
            }
            String note = note(row.predictions());
            cells.add(new Sheet.Cell(note, note));
            rows.add(new Sheet.Row(cells));
        }
        return new Sheet(headers, rows);
    }

    private static String note(List<PowerPrediction> predictions) {
        return predictions.stream()
                .map(each -> each instanceof PowerPrediction.Unknown unknown
                        ? unknown.reason()
                        : ((PowerPrediction.Predicted) each).distance().sentence())
                .filter(sentence -> !sentence.isEmpty())
                .distinct()
                .map(Numbers::inSentence)
                .collect(Collectors.joining(" "));
    }

    private static String naive(Optional<NaiveScaling> scaling) {
        return scaling.map(each -> "\n" + Words.naive(each)).orElse("");
    }

    /** Returns a power with its uncertainty, in parentheses where it is extrapolated; a dash where nobody knows. */
    static Sheet.Cell power(PowerPrediction prediction, double confidence) {
        if (!(prediction instanceof PowerPrediction.Predicted predicted)) {
            String reason = prediction instanceof PowerPrediction.Unknown unknown ? unknown.reason() : "";
            return new Sheet.Cell(NONE, reason);
        }
        String text = watts(predicted);
        String hover = TEXTS.text("normalised.power", text, Coverage.words(), intervals(predicted, confidence)) + " "
                + Numbers.inSentence(predicted.distance().sentence());
        return new Sheet.Cell(predicted.distance().outside() ? "(" + text + ")" : text, hover.strip());
    }

    /** Returns the power with all of its uncertainty. */
    static String watts(PowerPrediction.Predicted predicted) {
        double half = Coverage.expanded(predicted.wholeUncertaintyWatts());
        return Figures.stated(predicted.powerWatts(), half).text();
    }

    /** Returns where curve and new reading lie, in two sentences. */
    static String intervals(PowerPrediction.Predicted predicted, double confidence) {
        String share = Numbers.percent(confidence);
        return TEXTS.text(
                "normalised.intervals",
                range(predicted.confidenceInterval(confidence)),
                range(predicted.predictionInterval(confidence)),
                share);
    }

    private static String range(CoverageInterval interval) {
        return TEXTS.text("normalised.range", Figures.fixed(interval.lower(), 1), Figures.fixed(interval.upper(), 1));
    }

    /** Returns what each load gives at one supply voltage. */
    static Sheet readOut(PowerStudy study, double supplyVolts, double confidence) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header(TEXTS.text("normalised.load"), false, TEXTS.text("normalised.loadHint")),
                new Sheet.Header("W", true, TEXTS.text("normalised.powerHint", Words.uncertainty())),
                new Sheet.Header(Numbers.percent(confidence), true, TEXTS.text("line.intervalHint")));
        List<Sheet.Row> rows = new ArrayList<>();
        for (PlacedLoad load : study.loads()) {
            PowerPrediction prediction = study.predict(supplyVolts, load.loadOhms(), load.mode());
            Sheet.Cell interval = prediction instanceof PowerPrediction.Predicted predicted
                    ? Sheet.Cell.of(between(predicted.wholeEstimate().interval(confidence)))
                    : Sheet.Cell.of(NONE);
            rows.add(new Sheet.Row(List.of(Sheet.Cell.of(Words.load(load)), power(prediction, confidence), interval)));
        }
        return new Sheet(headers, rows);
    }

    private static String between(CoverageInterval interval) {
        return Figures.fixed(Math.max(0, interval.lower()), 1) + "\u2013" + Figures.fixed(interval.upper(), 1);
    }

    /** Returns how much channels, modes and loads differ. */
    static Sheet differences(List<Difference> differences, double confidence) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header(TEXTS.text("differences.what"), false, TEXTS.text("differences.whatHint")),
                new Sheet.Header(TEXTS.text("differences.against"), false, TEXTS.text("differences.againstHint")),
                new Sheet.Header(TEXTS.text("differences.at"), false, TEXTS.text("differences.atHint")),
                new Sheet.Header(
                        TEXTS.text("differences.watts"),
                        true,
                        TEXTS.text("differences.wattsHint", Words.uncertainty())),
                new Sheet.Header(TEXTS.text("differences.percent"), true, TEXTS.text("differences.ratioHint")),
                new Sheet.Header(TEXTS.text("differences.db"), true, TEXTS.text("differences.ratioHint")),
                new Sheet.Header(Numbers.percent(confidence) + " (dB)", true, TEXTS.text("differences.intervalHint")),
                new Sheet.Header(TEXTS.text("differences.meaning"), false, TEXTS.text("differences.meaningHint")));
        return new Sheet(headers, differences.stream().map(StudySheets::row).toList());
    }

    private static Sheet.Row row(Difference each) {
        String sentence = Numbers.inSentence(each.power().sentence());
        double half = Coverage.expanded(each.power().differenceWatts().standardUncertainty());
        CoverageInterval interval = each.power().intervalDb();
        return new Sheet.Row(List.of(
                new Sheet.Cell(each.what(), sentence),
                Sheet.Cell.of(each.against()),
                Sheet.Cell.of(Words.load(each.load()) + ", " + Figures.fixed(each.supplyVolts(), 1) + " V"),
                Sheet.Cell.of(Figures.stated(each.power().differenceWatts().value(), half)
                        .text()),
                Sheet.Cell.of(Figures.signed(100 * each.power().relative().value(), 1)),
                Sheet.Cell.of(Figures.signed(each.power().differenceDb().value(), 2)),
                Sheet.Cell.of(TEXTS.text(
                        "differences.range", Figures.signed(interval.lower(), 2), Figures.signed(interval.upper(), 2))),
                new Sheet.Cell(sentence, sentence)));
    }

    /** Returns the readings beside the joint curve, in the order of the study. */
    static Sheet residuals(PowerStudy study) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header(TEXTS.text("residuals.reading"), false, TEXTS.text("residuals.readingHint")),
                new Sheet.Header(TEXTS.text("normalised.load"), false, TEXTS.text("normalised.loadHint")),
                new Sheet.Header(TEXTS.text("residuals.supply"), true, TEXTS.text("residuals.supplyHint")),
                new Sheet.Header(TEXTS.text("residuals.read"), true, TEXTS.text("residuals.readHint")),
                new Sheet.Header(TEXTS.text("residuals.curve"), true, TEXTS.text("residuals.curveHint")),
                new Sheet.Header(TEXTS.text("differences.percent"), true, TEXTS.text("residuals.percentHint")),
                new Sheet.Header(TEXTS.text("residuals.deviations"), true, TEXTS.text("residuals.deviationsHint")),
                new Sheet.Header(TEXTS.text("residuals.leverage"), true, TEXTS.text("residuals.leverageHint")));
        return new Sheet(
                headers,
                study.fit().diagnostics().residuals().stream()
                        .map(StudySheets::row)
                        .toList());
    }

    private static Sheet.Row row(ResidualPoint residual) {
        String hover = residual.outlier() ? TEXTS.text("residuals.outlier") : "";
        return new Sheet.Row(List.of(
                new Sheet.Cell(residual.point().label(), hover),
                Sheet.Cell.of(Words.load(new PlacedLoad(
                        residual.point().loadOhms(), residual.point().mode()))),
                Sheet.Cell.of(Figures.fixed(residual.point().supplyVolts(), 2)),
                Sheet.Cell.of(Figures.fixed(residual.point().powerWatts(), 1)),
                Sheet.Cell.of(Figures.fixed(residual.fittedWatts(), 1)),
                Sheet.Cell.of(Figures.signed(100 * residual.residualWatts() / residual.fittedWatts(), 2)),
                new Sheet.Cell(
                        Figures.signed(residual.studentised(), 1) + (residual.outlier() ? "\u00a0!" : ""), hover),
                Sheet.Cell.of(Figures.fixed(residual.leverage(), 2))));
    }
}
