// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** What a joint study says, as tables. */
final class StudySheets {
    private static final String NONE = "\u2013";

    private StudySheets() {}

    private static String uncertainty() {
        return Coverage.adjective().toLowerCase(Locale.ROOT) + " uncertainty (" + Coverage.words() + ")";
    }

    /** Returns the values found with their uncertainties and how they hang together. */
    static Sheet parameters(PowerStudy study, double confidence) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header("Parameter", false, "What the model has, see the help."),
                new Sheet.Header("Value", true, "Found by the fit, with its " + uncertainty() + "."),
                new Sheet.Header("Unit", false, "Of value and uncertainty."),
                new Sheet.Header("Note", false, "What else is to be known of the value."),
                new Sheet.Header(
                        "Correlation",
                        false,
                        "From \u22121 to 1: how far an error of this value goes with one of another."));
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
                correlations.add(Figures.fixed(covariance.correlation(row, other), 2) + " with "
                        + found.get(other).parameter().words());
            }
        }
        String note = parameter.atBound() ? "On its bound, counts as fixed there." : freedom(estimate);
        String text = half > 0 ? Figures.stated(estimate.value(), half).text() : Numbers.digits(estimate.value(), 4);
        CoverageInterval interval = estimate.interval(confidence);
        String hover = half > 0
                ? Numbers.percent(confidence) + " interval " + Numbers.digits(interval.lower(), 4) + " to "
                        + Numbers.digits(interval.upper(), 4) + " "
                        + unit(parameter)
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
                ? "Uncertainty from the scatter, " + Numbers.shown(estimate.degreesOfFreedom()) + " degrees of freedom."
                : "Uncertainty from that of the readings.";
    }

    /** Returns the power of each load at some supply volts. */
    static Sheet normalised(PowerStudy study, List<Double> supplyVolts, double confidence) {
        List<Sheet.Header> headers = new ArrayList<>();
        headers.add(new Sheet.Header("Load", false, "As connected."));
        for (double each : supplyVolts) {
            headers.add(new Sheet.Header(
                    "W at " + Figures.volts(each) + " V",
                    true,
                    "Power by the joint curve with its " + uncertainty()
                            + "; in parentheses where no reading reaches."));
        }
        headers.add(new Sheet.Header("Note", false, "How far the outermost figures lie from the readings."));
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
        return scaling.map(each -> "\nThe square law from " + Figures.fixed(each.fromVolts(), 1) + " V would say "
                        + Figures.fixed(each.naiveWatts(), 1) + " W, "
                        + Figures.signed(each.naiveAboveStudyDb(), 2) + " dB.")
                .orElse("");
    }

    /** Returns a power with its uncertainty, in parentheses where it is extrapolated; a dash where nobody knows. */
    static Sheet.Cell power(PowerPrediction prediction, double confidence) {
        if (!(prediction instanceof PowerPrediction.Predicted predicted)) {
            String reason = prediction instanceof PowerPrediction.Unknown unknown ? unknown.reason() : "";
            return new Sheet.Cell(NONE, reason);
        }
        String text = watts(predicted);
        String hover = text + " W (" + Coverage.words() + "). " + intervals(predicted, confidence) + " "
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
        return "The curve lies within " + range(predicted.confidenceInterval(confidence)) + " (" + share
                + "). A new reading would lie within " + range(predicted.predictionInterval(confidence)) + " (" + share
                + ").";
    }

    private static String range(CoverageInterval interval) {
        return Figures.fixed(interval.lower(), 1) + " to " + Figures.fixed(interval.upper(), 1) + " W";
    }

    /** Returns what each load gives at one supply voltage. */
    static Sheet readOut(PowerStudy study, double supplyVolts, double confidence) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header("Load", false, "As connected."),
                new Sheet.Header(
                        "W",
                        true,
                        "Power by the joint curve with its " + uncertainty() + "; in parentheses where no"
                                + " reading reaches."),
                new Sheet.Header(Numbers.percent(confidence), true, "Where the joint curve lies, in watts."));
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
                new Sheet.Header("What", false, "Data set, channel, mode or load."),
                new Sheet.Header("Against", false, "What it is held against."),
                new Sheet.Header("At", false, "Load and supply volts that the watts hold for."),
                new Sheet.Header("Diff. (W)", true, "First minus second, with its " + uncertainty() + "."),
                new Sheet.Header("Diff. (%)", true, "First over second."),
                new Sheet.Header("Diff. (dB)", true, "First over second."),
                new Sheet.Header(Numbers.percent(confidence) + " (dB)", true, "Where the true difference lies."),
                new Sheet.Header("What it means", false, "Whether it is real, and whether it would be heard."));
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
                Sheet.Cell.of(Figures.signed(interval.lower(), 2) + " to " + Figures.signed(interval.upper(), 2)),
                new Sheet.Cell(sentence, sentence)));
    }

    /** Returns the readings beside the joint curve, in the order of the study. */
    static Sheet residuals(PowerStudy study) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header("Reading", false, "Entry of the log, and channel."),
                new Sheet.Header("Load", false, "As connected."),
                new Sheet.Header("Supply (V)", true, "At the amplifier's terminals."),
                new Sheet.Header("Read (W)", true, "Brought to the nominal load."),
                new Sheet.Header("Curve (W)", true, "By the joint curve."),
                new Sheet.Header("Diff. (%)", true, "Reading over curve."),
                new Sheet.Header(
                        "Std. dev.",
                        true,
                        "The same in its own standard deviations; beyond 3 chance hardly explains it."),
                new Sheet.Header("Leverage", true, "How much the reading pulls the curve to itself, 0 to 1."));
        return new Sheet(
                headers,
                study.fit().diagnostics().residuals().stream()
                        .map(StudySheets::row)
                        .toList());
    }

    private static Sheet.Row row(ResidualPoint residual) {
        String hover = residual.outlier() ? "Lies so far off that chance hardly explains it: check it." : "";
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
