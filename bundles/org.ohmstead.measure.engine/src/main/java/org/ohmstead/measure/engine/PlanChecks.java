// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
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
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/** Asks a measurement and all precautions about a step. A precaution that gives no answer forbids it. */
final class PlanChecks {
    private static final Messages TEXTS = Messages.of(PlanChecks.class);

    private final Catalog catalog;
    private final RunLimits limits;
    private final List<Precaution> further;

    private record Heard(List<Problem> problems, List<StopLimit> stopLimits) {
        Heard {
            problems = List.copyOf(problems);
            stopLimits = List.copyOf(stopLimits);
        }

        static Heard of(Problem problem) {
            return new Heard(List.of(problem), List.of());
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
        Heard said = said(item, subject, true);
        List<Problem> unconfirmed = said.problems().stream()
                .filter(problem -> problem.severity() == Severity.WARNING)
                .filter(problem -> !confirmed.contains(new Yes(item.stepId(), problem.what())))
                .toList();
        return new DryStep(item, readiness(item, subject), said.problems(), unconfirmed, said.stopLimits());
    }

    /** Returns what the log keeps of a problem that was shown: its words in English, where the precaution has them. */
    String kept(PlanSetup setup, String stepId, Problem problem) {
        return setup.items().stream()
                .filter(item -> item.stepId().equals(stepId))
                .findFirst()
                .map(item -> kept(item, setup.subject(item), problem))
                .orElse(problem.what());
    }

    private String kept(PlanItem item, Subject subject, Problem problem) {
        if (spoken().equals(Locale.ENGLISH.getLanguage())) {
            return problem.what();
        }
        List<Problem> shown = said(item, subject, false).problems();
        List<Problem> kept = inEnglish(item, subject).problems();
        int at = shown.indexOf(problem);
        return at >= 0 && kept.size() == shown.size() ? kept.get(at).what() : problem.what();
    }

    /** Returns what the log keeps of stop limits: the same with their reasons in English, where the precautions have them. */
    List<StopLimit> kept(PlanItem item, Subject subject, List<StopLimit> shown) {
        if (shown.isEmpty() || spoken().equals(Locale.ENGLISH.getLanguage())) {
            return shown;
        }
        List<StopLimit> kept = inEnglish(item, subject).stopLimits();
        boolean same = kept.size() == shown.size()
                && IntStream.range(0, kept.size()).allMatch(i -> isSame(kept.get(i), shown.get(i)));
        return same ? kept : shown;
    }

    private static String spoken() {
        return Language.current().getLanguage();
    }

    private static boolean isSame(StopLimit one, StopLimit other) {
        return one.quantity() == other.quantity() && one.highest() == other.highest();
    }

    private Heard inEnglish(PlanItem item, Subject subject) {
        return Language.speaking(Locale.ENGLISH, () -> said(item, subject, false));
    }

    /** Asks all precautions; faults of plug-ins are counted where this is not but the same question in another language. */
    private Heard said(PlanItem item, Subject subject, boolean counted) {
        List<Problem> problems = new ArrayList<>();
        List<StopLimit> stopLimits = new ArrayList<>();
        for (Plugin<Precaution, String> precaution : catalog.precautions()) {
            Heard said = ask(precaution, item, subject, counted);
            problems.addAll(said.problems());
            stopLimits.addAll(said.stopLimits());
        }
        for (Precaution precaution : further) {
            Contained.Answer<Heard> answer = answer(precaution, subject);
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
        return new Heard(problems, stopLimits);
    }

    private Heard ask(Plugin<Precaution, String> precaution, PlanItem item, Subject subject, boolean counted) {
        if (catalog.isSetAside(precaution)) {
            return Heard.of(new Problem(
                    Severity.WARNING,
                    item.stepId(),
                    TEXTS.text("setAside.precaution", precaution.title()),
                    TEXTS.text("setAside.precaution.remedy")));
        }
        Contained.Answer<Heard> answer = answer(precaution.instance(), subject);
        Optional<Heard> said = answer.returned();
        if (said.isPresent()) {
            if (counted) {
                catalog.didWell(precaution);
            }
            return said.get();
        }
        String sentence = how(precaution.title(), answer);
        if (counted) {
            catalog.fault(precaution, sentence);
        }
        return Heard.of(unknown(item, sentence, TEXTS.text("unknown.plugin.remedy")));
    }

    private Contained.Answer<Heard> answer(Precaution precaution, Subject subject) {
        return Contained.call(
                "ohmstead precaution " + precaution.id(),
                limits.question(),
                () -> new Heard(
                        precaution.check(subject.project(), subject.step()),
                        precaution.stopLimits(subject.project(), subject.step())));
    }

    private static Problem unknown(PlanItem item, String sentence, String remedy) {
        return new Problem(Severity.ERROR, item.stepId(), TEXTS.text("unknown", sentence), remedy);
    }

    private String how(String title, Contained.Answer<?> answer) {
        return answer instanceof Contained.Answer.Threw<?> threw
                ? TEXTS.text(
                        "answer.failed", title, Contained.words(threw.cause()).text())
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
            return new Readiness.NotYet(TEXTS.text("setAside", measurement.title()), TEXTS.text("setAside.remedy"));
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
                ? TEXTS.text("answer.none", measurement.title())
                : how(measurement.title(), answer);
        catalog.fault(measurement, sentence);
        return new Readiness.NotYet(sentence, TEXTS.text("readiness.remedy"));
    }
}
