// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Messages;

/** Asks a measurement and all precautions about a step. A precaution that gives no answer forbids it. */
final class PlanChecks {
    private static final Messages TEXTS = Messages.of(PlanChecks.class);

    private final Catalog catalog;
    private final RunLimits limits;
    private final List<Precaution> further;

    private record Said(List<Problem> problems, List<StopLimit> stopLimits) {
        Said {
            problems = List.copyOf(problems);
            stopLimits = List.copyOf(stopLimits);
        }
    }

    /** A yes to a problem of a step. */
    record Yes(String stepId, String what) {}

    /** Makes checks with the plan's own precautions beside those that are plug-ins. */
    PlanChecks(Catalog catalog, RunLimits limits, List<Precaution> further) {
        this.catalog = catalog;
        this.limits = limits;
        this.further = List.copyOf(further);
    }

    DryStep check(PlanItem item, Subject subject, Set<Yes> confirmed) {
        List<Problem> problems = new ArrayList<>();
        List<StopLimit> stopLimits = new ArrayList<>();
        for (Plugin<Precaution, String> precaution : catalog.precautions()) {
            ask(precaution, item, subject, problems, stopLimits);
        }
        for (Precaution precaution : further) {
            Contained.Answer<Said> answer = answer(precaution, subject);
            answer.returned()
                    .ifPresentOrElse(
                            said -> {
                                problems.addAll(said.problems());
                                stopLimits.addAll(said.stopLimits());
                            },
                            () -> problems.add(unknown(
                                    item,
                                    how(PluginKind.PRECAUTION.named(precaution.id()), answer),
                                    TEXTS.text("unknown.remedy"))));
        }
        List<Problem> unconfirmed = problems.stream()
                .filter(problem -> problem.severity() == Severity.WARNING)
                .filter(problem -> !confirmed.contains(new Yes(item.stepId(), problem.what())))
                .toList();
        return new DryStep(item, readiness(item, subject), problems, unconfirmed, stopLimits);
    }

    private void ask(
            Plugin<Precaution, String> precaution,
            PlanItem item,
            Subject subject,
            List<Problem> problems,
            List<StopLimit> stopLimits) {
        if (catalog.isSetAside(precaution)) {
            problems.add(new Problem(
                    Severity.WARNING,
                    item.stepId(),
                    TEXTS.text("setAside.precaution", precaution.shownTitle()),
                    TEXTS.text("setAside.precaution.remedy")));
            return;
        }
        Contained.Answer<Said> answer = answer(precaution.instance(), subject);
        Optional<Said> said = answer.returned();
        if (said.isPresent()) {
            problems.addAll(said.get().problems());
            stopLimits.addAll(said.get().stopLimits());
            catalog.didWell(precaution);
            return;
        }
        String sentence = how(precaution.shownTitle(), answer);
        catalog.fault(precaution, sentence);
        problems.add(unknown(item, sentence, TEXTS.text("unknown.plugin.remedy")));
    }

    private Contained.Answer<Said> answer(Precaution precaution, Subject subject) {
        return Contained.call(
                "ohmstead precaution " + precaution.id(),
                limits.question(),
                () -> new Said(
                        precaution.check(subject.project(), subject.step()),
                        precaution.stopLimits(subject.project(), subject.step())));
    }

    private static Problem unknown(PlanItem item, String sentence, String remedy) {
        return new Problem(Severity.ERROR, item.stepId(), TEXTS.text("unknown", sentence), remedy);
    }

    private String how(String title, Contained.Answer<?> answer) {
        return answer instanceof Contained.Answer.Threw<?> threw
                ? TEXTS.text("answer.failed", title, Contained.words(threw.cause()))
                : TEXTS.text("answer.late", title, limits.question().toMillis() / 1000.0);
    }

    private Readiness readiness(PlanItem item, Subject subject) {
        Optional<Plugin<Measurement, MeasurementInfo>> found = catalog.measurement(item.measurementId());
        if (found.isEmpty()) {
            return new Readiness.NotYet(
                    TEXTS.text("none.measurement", item.measurementId()), TEXTS.text("none.measurement.remedy"));
        }
        Plugin<Measurement, MeasurementInfo> measurement = found.get();
        if (catalog.isSetAside(measurement)) {
            return new Readiness.NotYet(
                    TEXTS.text("setAside", measurement.shownTitle()), TEXTS.text("setAside.remedy"));
        }
        try {
            Settings.of(measurement.info().settings(), item.settings());
        } catch (SettingException wrong) {
            return new Readiness.NotYet(wrong.getMessage(), TEXTS.text("settings.remedy"));
        }
        Contained.Answer<Readiness> answer =
                Contained.call("ohmstead readiness " + measurement.id(), limits.question(), () -> measurement
                        .instance()
                        .readiness(subject));
        if (answer instanceof Contained.Answer.Value<Readiness> value && value.value() != null) {
            return value.value();
        }
        String sentence = answer instanceof Contained.Answer.Value<Readiness>
                ? TEXTS.text("answer.none", measurement.shownTitle())
                : how(measurement.shownTitle(), answer);
        catalog.fault(measurement, sentence);
        return new Readiness.NotYet(sentence, TEXTS.text("readiness.remedy"));
    }
}
