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
import org.ohmstead.curves.VerdictWords;
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

    SheetBuilder(ResultsSheet sheet, ChartBook book) {
        this.sheet = sheet;
        this.evidence = new Evidence(sheet);
        this.book = book;
    }

    SheetView build() {
        Project project = sheet.project();
        List<CurveGroup> groups = CurveGroup.of(sheet.curves());
        List<List<Chart>> curveRows = new CurveCharts(evidence, sheet.ratings(), book).rows(groups);
        LevelCharts levels = new LevelCharts(evidence, book);
        double volts = commonest(Rating::supplyVolts, USUAL_SUPPLY_VOLTS);
        ComparisonTables comparison = new ComparisonTables(evidence);
        return new SheetView(
                facts(project),
                RatingRows.conclusion(sheet.ratings(), project.sheet().rule()),
                evidence.confidencePercent(),
                RatingRows.of(sheet.ratings()),
                curveRows,
                SupplyWords.of(groups),
                new CurveTables(evidence).normalised(groups),
                levels.sweeps(),
                levels.spectra(),
                comparison.balance(),
                evidence.standing().stream()
                        .anyMatch(taken -> taken.reading().channels().size() > 2),
                comparison.bursts(),
                VerdictWords.sentence(project.sheet().rule()),
                uncertainty(volts),
                new ReadingBlocks(evidence).of(sheet.readings()),
                BenchTables.items(project.bench()),
                BenchTables.meters(project.bench().meters(), lastReading()),
                BenchTables.loads(project.loads()),
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
                List.of(book.half(budget.bars(), BARS_HEIGHT_RATIO)),
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
        item(items, "Model", amplifier.model());
        item(items, "Maker", amplifier.maker());
        item(items, "Serial number", amplifier.serialNumber());
        item(items, "Channels", Integer.toString(amplifier.channelCount()));
        item(items, "Supply type", Words.of(amplifier.supplyType()));
        item(items, "Lowest loads", lowestLoads(amplifier));
        item(items, "Fuses", fuses(amplifier));
        item(items, "Laboratory", project.sheet().laboratory());
        item(items, "Place", project.bench().place());
        item(items, "Tested", new Facts(sheet, evidence.speech()).tested());
        item(items, "Prepared by", project.sheet().preparedBy());
        item(items, "Sheet made", Figures.minute(sheet.producedAt()) + " UTC");
        item(items, "Project", project.title());
        return items;
    }

    private static void item(List<Item> items, String label, String value) {
        if (!value.isBlank()) {
            items.add(new Item(label, value));
        }
    }

    private static String lowestLoads(Amplifier amplifier) {
        return amplifier.lowestLoads().stream()
                .map(lowest -> Words.of(lowest.mode()) + " " + Figures.ohms(lowest.loadOhms()))
                .collect(Collectors.joining(", "));
    }

    private static String fuses(Amplifier amplifier) {
        return amplifier.fuses().stream()
                .map(fuse -> Figures.brief(fuse.ratedAmps(), 4) + "\u00a0A"
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
        items.add(new Item("Log head, SHA-256", log.headHash().isEmpty() ? "the log is empty" : log.headHash()));
        items.add(new Item("Entries in the log", Long.toString(log.entryCount())));
        items.add(new Item(
                "Readings",
                sheet.readings().size() + ", of which " + voided + " voided"
                        + (setAside > 0 ? " and " + setAside + " set aside" : "")));
        items.add(new Item(
                "Chain of hashes",
                log.verified() ? "checked for this sheet and intact" : "NOT checked for this sheet, or not intact"));
        items.add(new Item(
                "Procedures",
                distinct(entry -> entry.reading().provenance().procedureId() + " "
                        + entry.reading().provenance().procedureVersion())));
        String operators = distinct(entry -> entry.reading().provenance().operator());
        if (!operators.equals(Figures.NONE)) {
            items.add(new Item("Operators", operators));
        }
        items.add(new Item(
                "Measured with",
                "Ohmstead " + distinct(entry -> entry.reading().provenance().softwareVersion())));
        items.add(new Item("Sheet made with", "Ohmstead " + sheet.softwareVersion()));
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
        Table.Builder table =
                Table.titled("").text("Weight").text("Where").text("What").text("Remedy");
        for (Problem problem : sheet.problems()) {
            table.row(Words.of(problem.severity()), problem.where(), problem.what(), problem.remedy());
        }
        return table.build();
    }
}
