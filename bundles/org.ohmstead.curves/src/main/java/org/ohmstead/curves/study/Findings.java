// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.units.Decibels;

/** What a study means, in sentences. */
final class Findings {
    /** An uncertainty of so many percent per volt leaves no statement. */
    private static final double TOO_UNCERTAIN_SHARE = 0.5;

    /** So many readings off the curve are named; the rest are counted. */
    private static final int MOST_NAMED = 3;

    private Findings() {}

    static List<String> of(PowerStudy study) {
        List<String> sentences = new ArrayList<>();
        sentences.add(meaning(study));
        sentences.addAll(study.choice().sentences());
        if (!study.terrain().severalLoads()) {
            sentences.add(StudyWords.say(
                    "Every channel worked into about %.3g ohm: the source resistance cannot be separated with one load."
                            + " The values given hold for this load alone, with its losses in them.",
                    study.terrain().lowestOhms()));
        }
        ModelFit fit = study.fit();
        if (fit.uncertaintyFromScatter()) {
            sentences.add(StudyWords.say(
                    "The readings scatter %.1f times more about the curve than their uncertainties say; the intervals"
                            + " are widened to match.",
                    fit.scatterRatio().orElseThrow()));
        }
        for (FittedParameter parameter : fit.parameters()) {
            if (parameter.atBound()) {
                sentences.add(StudyWords.say(
                        "The %s ended on its bound, %.4g %s, and counts as fixed there.",
                        parameter.parameter().words(),
                        parameter.estimate().value(),
                        parameter.parameter().unit()));
            }
        }
        bridged(study).ifPresent(sentences::add);
        sentences.addAll(fit.diagnostics().sentences());
        List<StudyPoint> named =
                fit.diagnostics().outliers().stream().map(ResidualPoint::point).toList();
        List<CurveMembership.Check> off = CurveMembership.of(study).offCurve().stream()
                .filter(check -> !named.contains(check.point()))
                .sorted(Comparator.comparingDouble((CurveMembership.Check check) -> -Math.abs(check.deviations())))
                .toList();
        off.stream().limit(MOST_NAMED).forEach(check -> sentences.add(check.sentence()));
        if (off.size() > MOST_NAMED) {
            sentences.add(
                    "Nor do " + (off.size() - MOST_NAMED) + " more, by less. Where so many do not, the model leaves"
                            + " something out: it holds on the whole, not to the last percent.");
        }
        GroupOffset.of(study).stream().filter(GroupOffset::clear).forEach(offset -> sentences.add(offset.sentence()));
        return List.copyOf(sentences);
    }

    private static String meaning(PowerStudy study) {
        SupplyModel model = study.fit().model();
        if (model instanceof SupplyModel.Regulated regulated) {
            return StudyWords.say(
                    "Regulated above %.1f V: power rises no further there. Below it %s",
                    regulated.kneeVolts(), slope(study, (study.lowestSupplyVolts() + regulated.kneeVolts()) / 2));
        }
        if (model instanceof SupplyModel.RegulatedThroughout) {
            return StudyWords.say(
                    "Regulated: from %.1f V to %.1f V the power does not depend on the supply.",
                    study.lowestSupplyVolts(), study.highestSupplyVolts());
        }
        double middle = study.terrain().middleVolts();
        if (model instanceof SupplyModel.CurrentLimited limited) {
            double below = study.terrain().highestOhms();
            Optional<Estimate> percent = study.fit().percentPerVolt(middle, below, Mode.STEREO);
            return StudyWords.say(
                    "Limited in current: no channel gives more than %.3g A peak, so low loads gain nothing from more"
                            + " supply voltage. Below the limit %s",
                    limited.limitAmps(),
                    percent.map(found -> words(found, middle)).orElse("power follows the supply."));
        }
        if (model instanceof SupplyModel.Drooping drooping) {
            boolean celsius = drooping.by() == SupplyModel.WarmingMeasure.CASE_CELSIUS;
            double percent = -100 * (1 - Math.pow(1 - drooping.droopRatio(), 2));
            return StudyWords.say(
                    "Drooping: each %s changes the power by about %+.2g %%. Cold, %s",
                    celsius ? "kelvin of case temperature" : "run without a rest", percent, slope(study, middle));
        }
        if (model instanceof SupplyModel.Proportional) {
            return StudyWords.say(
                    "Readings near %.1f V only: other voltages are scaled by the square law, which holds for an"
                            + " unregulated amplifier without losses.",
                    middle);
        }
        return "Unregulated: power follows the supply; " + slope(study, middle);
    }

    private static String slope(PowerStudy study, double supplyVolts) {
        PowerStudy.PlacedLoad load = study.loads().get(0);
        return study.percentPerVolt(supplyVolts, load.loadOhms(), load.mode())
                .map(percent -> words(percent, supplyVolts))
                .orElse("there is no power at " + StudyWords.say("%.1f V.", supplyVolts));
    }

    private static String words(Estimate percent, double supplyVolts) {
        if (percent.standardUncertainty() > TOO_UNCERTAIN_SHARE * Math.abs(percent.value())) {
            return StudyWords.say(
                    "each extra volt near %.1f V changes it by %.0f %%, but with a standard uncertainty of %.0f %%,"
                            + " which is too much to build on.",
                    supplyVolts, percent.value(), percent.standardUncertainty());
        }
        return StudyWords.say("each extra volt near %.1f V gives about %.0f %%.", supplyVolts, percent.value());
    }

    /** The share of a stiff output that a channel gives into its lowest load, when more than one was read. */
    private static Optional<String> bridged(PowerStudy study) {
        SupplyModel model = study.fit().model();
        double low = study.terrain().lowestOhms();
        double output = model.outputOhms().orElse(0);
        if (!(output > 0) || model instanceof SupplyModel.CurrentLimited) {
            return Optional.empty();
        }
        double full = low / (low + output);
        double half = low / 2 / (low / 2 + output);
        double lossDb = Decibels.ofFieldRatio(half / full);
        return Optional.of(StudyWords.say(
                "With a source resistance of %.2g ohm a channel gives into half of %.3g ohm not twice the power but"
                        + " %.2f times (%.2f dB of the doubling is lost).",
                output, low, 2 * half * half / (full * full), -lossDb));
    }
}
