// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.ComparisonRequest;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.Period;
import org.ohmstead.history.PriceIndex;
import org.ohmstead.history.PricePerWatt;
import org.ohmstead.history.Subject;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.history.Trend;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/** Reads and compares, on any thread but the user interface's; logs that have not changed are read once. */
final class CompareWork {
    private static final Messages TEXTS = Messages.of(CompareWork.class);
    private static final double CONFIDENCE = 0.95;
    private static final double SIGNIFICANCE = 0.05;

    private final Map<Path, KnownLog> known = new HashMap<>();

    /**
     * The project that is open.
     *
     * @param folder of it
     * @param project with its edits
     * @param verified whether its log has been verified and is whole
     */
    record Open(Path folder, Project project, boolean verified) {}

    /** An item with what its log holds. */
    private record Found(CompareItem item, KnownLog log) {}

    /** Returns what the user's choice gives; what cannot be done is told within. */
    synchronized CompareAnswer answer(CompareChoice choice, Open open, WorkProgress progress) {
        List<String> problems = new ArrayList<>();
        List<Found> found = find(choice, open, problems, progress);
        forgetOthers(found);
        found.stream()
                .map(Found::log)
                .filter(log -> log.only().isPresent())
                .findFirst()
                .ifPresent(log -> problems.add(
                        TEXTS.text("compare.large", CompareItem.name(log.folder()), Shown.words(choice.mode()))));
        List<Subject> subjects = subjects(found, problems);
        Optional<Comparison> comparison = compare(choice, subjects, problems);
        Optional<PriceIndex> index = index(choice, problems);
        List<PricePerWatt> prices = prices(choice, comparison, index, problems);
        List<Double> loads = subjects.stream()
                .flatMap(subject -> subject.readings().stream())
                .map(Reading::nominalLoadOhms)
                .toList();
        return new CompareAnswer(
                comparison,
                prices,
                problems,
                loads,
                index.map(table -> List.copyOf(table.values().keySet())).orElse(List.of()),
                figureIds(found),
                trends(choice.figureId(), found));
    }

    private List<Found> find(CompareChoice choice, Open open, List<String> problems, WorkProgress progress) {
        List<Found> found = new ArrayList<>();
        Set<Path> failed = new LinkedHashSet<>();
        int done = 0;
        for (CompareItem item : choice.items()) {
            progress.stopIfCancelled();
            progress.step(done++, choice.items().size(), item.source());
            Path folder = item.folder().orElse(open.folder()).toAbsolutePath().normalize();
            if (failed.contains(folder)) {
                continue;
            }
            try {
                found.add(new Found(item, log(folder, open, choice.mode(), progress)));
            } catch (HistoryException failure) {
                failed.add(folder);
                problems.add(failure.getMessage());
            }
        }
        return found;
    }

    private KnownLog log(Path folder, Open open, Mode mode, WorkProgress progress) throws HistoryException {
        boolean isOpen = folder.equals(open.folder().toAbsolutePath().normalize());
        Project project = isOpen ? open.project() : KnownLog.project(folder);
        KnownLog before = known.get(folder);
        KnownLog log = before != null && before.isGood(KnownLog.headHash(folder), mode)
                ? before.withProject(project)
                : KnownLog.read(folder, project, mode, isOpen, isOpen && open.verified(), progress);
        known.put(folder, log);
        return log;
    }

    private void forgetOthers(List<Found> found) {
        known.keySet().retainAll(found.stream().map(each -> each.log().folder()).toList());
    }

    private static List<Subject> subjects(List<Found> found, List<String> problems) {
        List<Subject> subjects = new ArrayList<>();
        for (Found each : found) {
            List<Subject> its = Subject.of(
                    CompareItem.name(each.log().folder()),
                    each.log().project(),
                    each.log().entries(),
                    each.item().period());
            if (its.isEmpty()) {
                String when = each.item().period().words();
                problems.add(TEXTS.text(
                        when.isEmpty() ? "compare.noReading" : "compare.noReading.when",
                        each.item().source(),
                        when));
            }
            its.forEach(subject -> subjects.add(shortened(subject, each.item())));
        }
        int most = Comparison.MOST_SUBJECTS;
        if (subjects.size() > most) {
            problems.add(TEXTS.text("compare.many", Integer.toString(subjects.size()), Integer.toString(most)));
        }
        return Subject.withOwnNames(subjects.subList(0, Math.min(most, subjects.size())));
    }

    private static Subject shortened(Subject subject, CompareItem item) {
        String words = item.period().words();
        return words.isEmpty() ? subject : subject.withName(subject.name().replace(words, item.shortPeriod()));
    }

    private static Optional<Comparison> compare(CompareChoice choice, List<Subject> subjects, List<String> problems) {
        if (subjects.isEmpty()) {
            return Optional.empty();
        }
        try {
            Comparison comparison = Comparison.of(
                    subjects,
                    new ComparisonRequest(
                            choice.supplyVolts(),
                            choice.loadOhms(),
                            choice.mode(),
                            choice.kind(),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            CONFIDENCE));
            problems.addAll(comparison.refusals());
            return Optional.of(comparison);
        } catch (HistoryException refused) {
            problems.add(refused.getMessage());
            return Optional.empty();
        }
    }

    private static Optional<PriceIndex> index(CompareChoice choice, List<String> problems) {
        if (choice.indexFile().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(PriceIndex.read(choice.indexFile().get()));
        } catch (HistoryException unreadable) {
            problems.add(unreadable.getMessage());
            return Optional.empty();
        }
    }

    private static List<PricePerWatt> prices(
            CompareChoice choice, Optional<Comparison> comparison, Optional<PriceIndex> index, List<String> problems) {
        List<PricePerWatt> prices = new ArrayList<>();
        for (SubjectPower power : comparison.map(Comparison::powers).orElse(List.of())) {
            Optional<PricePerWatt> price = PricePerWatt.of(power, choice.mode());
            if (price.isPresent()) {
                prices.add(adjusted(price.get(), index, choice.basePeriod(), problems));
            }
        }
        return prices;
    }

    private static PricePerWatt adjusted(
            PricePerWatt price, Optional<PriceIndex> index, String base, List<String> problems) {
        if (index.isEmpty() || base.isEmpty()) {
            return price;
        }
        try {
            return price.adjusted(index.get(), base);
        } catch (HistoryException lacking) {
            String sentence = lacking.getMessage();
            if (!problems.contains(sentence)) {
                problems.add(sentence);
            }
            return price;
        }
    }

    private static List<String> figureIds(List<Found> found) {
        Set<String> ids = new LinkedHashSet<>(List.of(Trend.POWER, Trend.THD, Trend.SUPPLY));
        for (Found each : found) {
            for (LogEntry entry : each.log().entries()) {
                entry.figures().ifPresent(figures -> figures.figures().stream()
                        .map(MeasuredFigure::id)
                        .forEach(ids::add));
            }
        }
        return List.copyOf(ids);
    }

    /** What projects have of the same specimen, step and channel comes together; what does not name its specimen stays with its project. */
    private static List<Trend> trends(String figureId, List<Found> found) {
        Map<Trend.Line, List<Trend>> lines = new LinkedHashMap<>();
        Set<Path> seen = new LinkedHashSet<>();
        for (Found each : found) {
            if (seen.add(each.log().folder())) {
                for (Trend trend : Trend.of(each.log().entries(), figureId, Period.ALWAYS, SIGNIFICANCE)) {
                    Trend.Line line = trend.line().specimen().isEmpty()
                            ? named(trend.line(), CompareItem.name(each.log().folder()))
                            : trend.line();
                    lines.computeIfAbsent(line, any -> new ArrayList<>()).add(trend);
                }
            }
        }
        List<Trend> trends = new ArrayList<>();
        lines.forEach((line, its) -> trends.add(Trend.of(
                line, its.stream().flatMap(trend -> trend.points().stream()).toList(), SIGNIFICANCE)));
        return trends;
    }

    private static Trend.Line named(Trend.Line line, String specimen) {
        return new Trend.Line(specimen, line.figureId(), line.unit(), line.stepId(), line.channel(), line.at());
    }
}
