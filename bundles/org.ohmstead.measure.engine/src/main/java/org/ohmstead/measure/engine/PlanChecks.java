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

/** Asks a measurement and all precautions about a step. A precaution that gives no answer forbids it. */
final class PlanChecks {
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
                            () -> problems.add(
                                    unknown(item, "The precaution " + precaution.id() + how(answer), "Try again.")));
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
                    precaution.title() + " was set aside after faults and does not look at this step.",
                    "Bring it back, or look yourself."));
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
        String sentence = precaution.title() + how(answer);
        catalog.fault(precaution, sentence);
        problems.add(unknown(item, sentence, "Try again, or uninstall it and look yourself."));
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
        return new Problem(
                Severity.ERROR, item.stepId(), sentence + " So nobody knows whether this step is safe.", remedy);
    }

    private String how(Contained.Answer<?> answer) {
        return answer instanceof Contained.Answer.Threw<?> threw
                ? " failed with " + Contained.words(threw.cause()) + "."
                : " did not answer within " + limits.question().toMillis() / 1000.0 + " s.";
    }

    private Readiness readiness(PlanItem item, Subject subject) {
        Optional<Plugin<Measurement, MeasurementInfo>> found = catalog.measurement(item.measurementId());
        if (found.isEmpty()) {
            return new Readiness.NotYet(
                    "There is no measurement " + item.measurementId() + ".", "Install its plug-in, or choose another.");
        }
        Plugin<Measurement, MeasurementInfo> measurement = found.get();
        if (catalog.isSetAside(measurement)) {
            return new Readiness.NotYet(
                    measurement.title() + " was set aside after faults.", "Bring it back to try again.");
        }
        try {
            Settings.of(measurement.info().settings(), item.settings());
        } catch (SettingException wrong) {
            return new Readiness.NotYet(wrong.getMessage(), "Correct the settings.");
        }
        Contained.Answer<Readiness> answer =
                Contained.call("ohmstead readiness " + measurement.id(), limits.question(), () -> measurement
                        .instance()
                        .readiness(subject));
        if (answer instanceof Contained.Answer.Value<Readiness> value && value.value() != null) {
            return value.value();
        }
        String sentence = measurement.title()
                + (answer instanceof Contained.Answer.Value<Readiness>
                        ? " does not say whether it is ready."
                        : how(answer));
        catalog.fault(measurement, sentence);
        return new Readiness.NotYet(sentence, "Try again; if it stays, ask its author.");
    }
}
