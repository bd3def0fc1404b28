// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.report.LogStamp;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetReading;
import org.ohmstead.report.internal.Evidence.Taken;
import org.ohmstead.testlog.budget.ReadingBudget;

/** Turns what was found into what is printed. */
final class SheetBuilder {
    /** Where no rating says otherwise: the load and supply voltage that mobile amplifiers are usually rated at. */
    private static final double USUAL_LOAD_OHMS = 4;

    private static final double USUAL_SUPPLY_VOLTS = 14.4;
    private static final double BARS_HEIGHT_RATIO = 0.62;

    private final ResultsSheet sheet;
    private final Evidence evidence;
    private final ChartBook book;
    private final Speech speech;

    SheetBuilder(ResultsSheet sheet, Speech speech, ChartBook book) {
        this.sheet = sheet;
        this.evidence = new Evidence(sheet, speech);
        this.book = book;
        this.speech = speech;
    }

    SheetView build() {
        Project project = sheet.project();
        List<CurveGroup> groups = CurveGroup.of(sheet.curves());
        List<List<Chart>> curveRows = new CurveCharts(evidence, sheet.ratings(), book).rows(groups);
        LevelCharts levels = new LevelCharts(evidence, book);
        double volts = commonest(Rating::supplyVolts, USUAL_SUPPLY_VOLTS);
        RatingRows ratings = new RatingRows(speech);
        BenchTables bench = new BenchTables(speech);
        ComparisonTables comparison = new ComparisonTables(evidence);
        return new SheetView(
                facts(project),
                ratings.conclusion(sheet.ratings(), project.sheet().rule()),
                evidence.confidencePercent(),
                ratings.of(sheet.ratings()),
                curveRows,
                SupplyWords.of(groups, speech),
                new CurveTables(evidence).normalised(groups),
                levels.sweeps(),
                levels.spectra(),
                comparison.balance(),
                evidence.standing().stream()
                        .anyMatch(taken -> taken.reading().channels().size() > 2),
                comparison.bursts(),
                speech.sentence(project.sheet().rule()).replace('\u00a0', ' '),
                uncertainty(volts),
                new ReadingBlocks(evidence).of(sheet.readings()),
                bench.items(project.bench()),
                bench.meters(project.bench().meters(), lastReading()),
                bench.loads(project.loads()),
                project.sheet().remarks(),
                project.amplifier().notes(),
                integrity(),
                problems());
    }

    private UncertaintySection uncertainty(double volts) {
        BudgetTables tables = new BudgetTables(evidence);
        double ohms = commonest(Rating::loadOhms, USUAL_LOAD_OHMS);
        Optional<Taken> shown = tables.representative(ohms, volts);
        if (shown.isEmpty()) {
            return new UncertaintySection(List.of(), List.of(), List.of(), tables.contributions());
        }
        ReadingBudget budget = tables.budgetOf(shown.get());
        return new UncertaintySection(
                List.of(tables.budget(shown.get(), budget)),
                List.of(book.half(new PartNames(speech).bars(budget), BARS_HEIGHT_RATIO)),
                tables.notes(budget),
                tables.contributions());
    }

    private double commonest(Function<Rating, Double> property, double otherwise) {
        List<Double> values =
                sheet.project().amplifier().ratings().stream().map(property).toList();
        return values.stream()
                .sorted(Comparator.comparingLong((Double value) ->
                                values.stream().filter(value::equals).count())
                        .reversed())
                .findFirst()
                .orElse(otherwise);
    }

    private List<Item> facts(Project project) {
        Amplifier amplifier = project.amplifier();
        List<Item> items = new ArrayList<>();
        item(items, "fact.model", amplifier.model());
        item(items, "fact.maker", amplifier.maker());
        item(items, "fact.serial", amplifier.serialNumber());
        item(items, "fact.channels", Integer.toString(amplifier.channelCount()));
        item(items, "fact.supplyType", speech.of(amplifier.supplyType()));
        item(items, "fact.lowestLoads", lowestLoads(amplifier));
        item(items, "fact.fuses", fuses(amplifier));
        item(items, "fact.laboratory", project.sheet().laboratory());
        item(items, "fact.place", project.bench().place());
        item(items, "fact.tested", new Facts(sheet, speech).tested());
        item(items, "fact.preparedBy", project.sheet().preparedBy());
        item(items, "fact.made", Figures.minute(sheet.producedAt()) + " UTC");
        item(items, "fact.project", project.title());
        return items;
    }

    private void item(List<Item> items, String key, String value) {
        if (!value.isBlank()) {
            items.add(new Item(speech.text(key), value));
        }
    }

    private String lowestLoads(Amplifier amplifier) {
        return amplifier.lowestLoads().stream()
                .map(lowest -> speech.of(lowest.mode()) + " " + speech.ohms(lowest.loadOhms()))
                .collect(Collectors.joining(", "));
    }

    private String fuses(Amplifier amplifier) {
        return amplifier.fuses().stream()
                .map(fuse -> speech.brief(fuse.ratedAmps(), 4) + "\u00a0A"
                        + (fuse.style().isBlank() ? "" : " " + fuse.style()))
                .collect(Collectors.joining(", "));
    }

    private Instant lastReading() {
        return sheet.readings().stream()
                .map(entry -> entry.reading().takenAt())
                .max(Comparator.naturalOrder())
                .orElse(sheet.producedAt());
    }

    private long count(Predicate<SheetReading> which) {
        return sheet.readings().stream().filter(which).count();
    }

    private List<Item> integrity() {
        LogStamp log = sheet.log();
        long voided = count(entry -> entry.voidReason().isPresent());
        long setAside = count(entry -> entry.voidReason().isEmpty() && !entry.stands());
        List<Item> items = new ArrayList<>();
        items.add(new Item(
                speech.text("integrity.head"),
                log.headHash().isEmpty() ? speech.text("integrity.empty") : log.headHash()));
        items.add(new Item(speech.text("integrity.entries"), Long.toString(log.entryCount())));
        items.add(new Item(
                speech.text("fact.readings"),
                speech.text(
                        setAside > 0 ? "integrity.readingsSetAside" : "integrity.readings",
                        sheet.readings().size() + "",
                        voided + "",
                        setAside + "")));
        items.add(new Item(
                speech.text("integrity.chain"),
                speech.text(log.verified() ? "integrity.intact" : "integrity.unchecked")));
        items.add(new Item(
                speech.text("integrity.procedures"),
                distinct(entry -> entry.reading().provenance().procedureId() + " "
                        + entry.reading().provenance().procedureVersion())));
        String operators = distinct(entry -> entry.reading().provenance().operator());
        if (!operators.equals(Figures.NONE)) {
            items.add(new Item(speech.text("integrity.operators"), operators));
        }
        items.add(new Item(
                speech.text("integrity.measuredWith"),
                "Ohmstead " + distinct(entry -> entry.reading().provenance().softwareVersion())));
        items.add(new Item(speech.text("integrity.madeWith"), "Ohmstead " + sheet.softwareVersion()));
        return items;
    }

    private String distinct(Function<SheetReading, String> text) {
        String all = sheet.readings().stream()
                .map(text)
                .filter(each -> !each.isBlank())
                .distinct()
                .collect(Collectors.joining(", "));
        return all.isEmpty() ? Figures.NONE : all;
    }

    private Table problems() {
        Table.Builder table = Table.titled("")
                .text(speech.text("problem.weight"))
                .text(speech.text("problem.where"))
                .text(speech.text("problem.what"))
                .text(speech.text("problem.remedy"));
        for (Problem problem : sheet.problems()) {
            table.row(speech.of(problem.severity()), problem.where(), problem.what(), problem.remedy());
        }
        return table.build();
    }
}
