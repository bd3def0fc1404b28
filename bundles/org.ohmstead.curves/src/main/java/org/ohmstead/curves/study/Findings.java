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
import org.ohmstead.units.text.Messages;

/** What a study means, in sentences. */
final class Findings {
    private static final Messages TEXTS = Messages.of(Findings.class);

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
            sentences.add(TEXTS.text(
                    "finding.oneLoad", StudyWords.say("%.3g", study.terrain().lowestOhms())));
        }
        ModelFit fit = study.fit();
        if (fit.uncertaintyFromScatter()) {
            sentences.add(TEXTS.text(
                    "finding.scatter", StudyWords.say("%.1f", fit.scatterRatio().orElseThrow())));
        }
        for (FittedParameter parameter : fit.parameters()) {
            if (parameter.atBound()) {
                sentences.add(TEXTS.text(
                        "finding.bound",
                        parameter.parameter().words(),
                        StudyWords.say("%.4g", parameter.estimate().value()),
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
            sentences.add(TEXTS.text("finding.more", Integer.toString(off.size() - MOST_NAMED)));
        }
        GroupOffset.of(study).stream().filter(GroupOffset::clear).forEach(offset -> sentences.add(offset.sentence()));
        return List.copyOf(sentences);
    }

    private static String meaning(PowerStudy study) {
        SupplyModel model = study.fit().model();
        if (model instanceof SupplyModel.Regulated regulated) {
            return TEXTS.text(
                    "finding.regulatedAbove",
                    StudyWords.say("%.1f", regulated.kneeVolts()),
                    slope(study, (study.lowestSupplyVolts() + regulated.kneeVolts()) / 2));
        }
        if (model instanceof SupplyModel.RegulatedThroughout) {
            return TEXTS.text(
                    "finding.regulated",
                    StudyWords.say("%.1f", study.lowestSupplyVolts()),
                    StudyWords.say("%.1f", study.highestSupplyVolts()));
        }
        double middle = study.terrain().middleVolts();
        if (model instanceof SupplyModel.CurrentLimited limited) {
            double below = study.terrain().highestOhms();
            Optional<Estimate> percent = study.fit().percentPerVolt(middle, below, Mode.STEREO);
            return TEXTS.text(
                    "finding.limited",
                    StudyWords.say("%.3g", limited.limitAmps()),
                    percent.map(found -> words(found, middle)).orElse(TEXTS.text("finding.follows")));
        }
        if (model instanceof SupplyModel.Drooping drooping) {
            boolean celsius = drooping.by() == SupplyModel.WarmingMeasure.CASE_CELSIUS;
            double percent = -100 * (1 - Math.pow(1 - drooping.droopRatio(), 2));
            return TEXTS.text(
                    "finding.drooping",
                    TEXTS.text(celsius ? "finding.kelvin" : "finding.run"),
                    StudyWords.say("%+.2g", percent),
                    slope(study, middle));
        }
        if (model instanceof SupplyModel.Proportional) {
            return TEXTS.text("finding.proportional", StudyWords.say("%.1f", middle));
        }
        return TEXTS.text("finding.unregulated", slope(study, middle));
    }

    private static String slope(PowerStudy study, double supplyVolts) {
        PowerStudy.PlacedLoad load = study.loads().get(0);
        return study.percentPerVolt(supplyVolts, load.loadOhms(), load.mode())
                .map(percent -> words(percent, supplyVolts))
                .orElse(TEXTS.text("finding.noPower", StudyWords.say("%.1f", supplyVolts)));
    }

    private static String words(Estimate percent, double supplyVolts) {
        if (percent.standardUncertainty() > TOO_UNCERTAIN_SHARE * Math.abs(percent.value())) {
            return TEXTS.text(
                    "finding.uncertain",
                    StudyWords.say("%.1f", supplyVolts),
                    StudyWords.say("%.0f", percent.value()),
                    StudyWords.say("%.0f", percent.standardUncertainty()));
        }
        return TEXTS.text(
                "finding.slope", StudyWords.say("%.1f", supplyVolts), StudyWords.say("%.0f", percent.value()));
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
        return Optional.of(TEXTS.text(
                "finding.halfLoad",
                StudyWords.say("%.2g", output),
                StudyWords.say("%.3g", low),
                StudyWords.say("%.2f", 2 * half * half / (full * full)),
                StudyWords.say("%.2f", -lossDb)));
    }
}
