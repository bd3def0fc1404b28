// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.ComparisonRequest;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.PricePerWatt;
import org.ohmstead.history.Subject;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Price;
import org.ohmstead.model.Reading;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetComparison;
import org.ohmstead.report.internal.ComparisonView.Group;

/** Puts amplifiers, or periods of one, beside each other, at the customary voltages and at each load that several have. */
final class ComparisonBuilder {
    private static final int MOST_GROUPS = 8;
    private static final double USUAL_LOAD_OHMS = 4;
    private static final int NAME_CHARACTERS = 60;

    private final ResultsSheet sheet;
    private final Speech speech;
    private final ComparisonGroups groups;
    private final List<Subject> subjects;
    private final double confidence;

    ComparisonBuilder(ResultsSheet sheet, Speech speech, ChartBook book) {
        this.sheet = sheet;
        this.speech = speech;
        this.subjects = sheet.form().comparison().map(SheetComparison::subjects).orElse(List.of());
        this.confidence = sheet.project().sheet().confidence();
        this.groups = new ComparisonGroups(subjects, speech, book);
    }

    /** A mode and load, and steady or burst. */
    record Setting(PowerKind kind, Mode mode, double loadOhms) {
        static final Comparator<Setting> ORDER = Comparator.comparing(Setting::kind)
                .thenComparing(Setting::mode)
                .thenComparing(Comparator.comparingDouble(Setting::loadOhms).reversed());

        /** That which is nearest to what most ratings are stated for comes first. */
        static final Comparator<Setting> IMPORTANCE = Comparator.comparing(Setting::kind)
                .thenComparing(Setting::mode)
                .thenComparingDouble(setting -> Math.abs(Math.log(setting.loadOhms() / USUAL_LOAD_OHMS)));
    }

    ComparisonView build() {
        SortedMap<Setting, SortedMap<Double, Comparison>> shown = new TreeMap<>(Setting.ORDER);
        for (Setting setting : settings()) {
            SortedMap<Double, Comparison> byVolts = byVolts(setting);
            if (!byVolts.isEmpty() && shown.size() < MOST_GROUPS) {
                shown.put(setting, byVolts);
            }
        }
        List<Group> made = new ArrayList<>();
        shown.forEach((setting, byVolts) -> made.add(groups.of("group-" + (made.size() + 1), setting, byVolts)));
        Optional<Comparison> main = shown.keySet().stream()
                .min(Setting.IMPORTANCE)
                .map(setting -> ComparisonGroups.main(shown.get(setting)));
        return new ComparisonView(
                main.map(this::conclusion).orElse(speech.text("comparison.nothing")),
                subjectTable(),
                made,
                main.map(this::prices).orElse(Table.titled("").text("").build()),
                speech.percent(confidence, 4),
                sheet.project().sheet().remarks());
    }

    /** Returns the settings that two or more have, or those of a single one, those for steady tones first. */
    private List<Setting> settings() {
        SortedMap<Setting, Integer> counts = new TreeMap<>(Setting.ORDER);
        for (Subject subject : subjects) {
            subject.readings().stream()
                    .map(reading ->
                            new Setting(reading.stimulus().powerKind(), reading.mode(), reading.nominalLoadOhms()))
                    .distinct()
                    .forEach(setting -> counts.merge(setting, 1, Integer::sum));
        }
        int needed = Math.min(2, subjects.size());
        return counts.keySet().stream()
                .filter(setting -> counts.get(setting) >= needed)
                .toList();
    }

    /** Returns the comparisons at those customary voltages at which somebody has a power. */
    private SortedMap<Double, Comparison> byVolts(Setting setting) {
        SortedMap<Double, Comparison> found = new TreeMap<>();
        for (double volts : CurveTables.CUSTOMARY_VOLTS) {
            Comparison comparison = compare(new ComparisonRequest(
                    volts,
                    setting.loadOhms(),
                    setting.mode(),
                    setting.kind(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    confidence));
            if (!comparison.powers().isEmpty()) {
                found.put(volts, comparison);
            }
        }
        return found;
    }

    private Comparison compare(ComparisonRequest request) {
        try {
            return Comparison.of(subjects, request);
        } catch (HistoryException impossible) {
            throw new IllegalStateException(
                    "The subjects of a comparison sheet were checked when it was made.", impossible);
        }
    }

    private String conclusion(Comparison main) {
        SubjectPower most = main.powers().stream()
                .max(Comparator.comparingDouble(power -> power.own().value()))
                .orElseThrow();
        String where = groups.where(main.request());
        String power = speech.stated(most.watts().value(), most.watts().expandedUncertainty(confidence));
        String name = PlainText.shortened(most.subject().name(), NAME_CHARACTERS);
        if (main.powers().size() == 1) {
            return speech.text("comparison.alone", where, name, power);
        }
        boolean close = main.differences().stream()
                .filter(each -> each.first().equals(most) || each.second().equals(most))
                .anyMatch(each -> !each.significant());
        return speech.text(close ? "comparison.close" : "comparison.most", where, name, power);
    }

    private Table subjectTable() {
        boolean priced = subjects.stream().anyMatch(subject -> subject.price().isPresent());
        Table.Builder table = Table.titled("")
                .brief(speech.text("comparison.number"))
                .text(speech.text("comparison.subject"))
                .text(speech.text("comparison.source"))
                .number(speech.text("fact.readings"), "")
                .brief(speech.text("comparison.measured"));
        if (priced) {
            table.number(speech.text("comparison.price"), "");
        }
        for (int index = 0; index < subjects.size(); index++) {
            Subject subject = subjects.get(index);
            List<String> cells = new ArrayList<>(List.of(
                    Integer.toString(index + 1),
                    subject.name(),
                    subject.source(),
                    Integer.toString(subject.readings().size()),
                    measured(subject)));
            if (priced) {
                cells.add(subject.price().map(this::words).orElse(Figures.NONE));
            }
            table.row(cells);
        }
        return table.build();
    }

    private String words(Price price) {
        return speech.fixed(price.amount(), 2) + "\u00a0" + price.currency() + " (" + price.on() + ")";
    }

    private String measured(Subject subject) {
        List<Instant> times =
                subject.readings().stream().map(Reading::takenAt).sorted().toList();
        if (times.isEmpty()) {
            return Figures.NONE;
        }
        String first = Figures.day(times.get(0));
        String last = Figures.day(times.get(times.size() - 1));
        return first.equals(last) ? first : speech.text("fromTo", first, last);
    }

    private Table prices(Comparison main) {
        Table.Builder table = Table.titled(groups.where(main.request()))
                .text(speech.text("comparison.subject"))
                .number(speech.text("power"), "W")
                .number(speech.text("comparison.outputs"), "")
                .number(speech.text("comparison.perWatt"), "");
        for (SubjectPower power : main.powers()) {
            Optional<PricePerWatt> price = PricePerWatt.of(power, main.request().mode());
            if (price.isPresent()) {
                table.row(
                        groups.name(power.subject()),
                        groups.power(power, confidence),
                        Integer.toString(price.get().outputs()),
                        speech.stated(
                                        price.get().perWatt().value(),
                                        price.get().perWatt().expandedUncertainty(confidence))
                                + "\u00a0" + price.get().price().currency() + "/W");
            }
        }
        return table.build();
    }
}
