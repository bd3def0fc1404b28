// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.TableSpec;

/** The stock of load resistors. */
final class PartsPage implements SectionPage {
    @Override
    public String id() {
        return "parts";
    }

    @Override
    public String name() {
        return Texts.text("parts.name");
    }

    @Override
    public int order() {
        return 300;
    }

    @Override
    public String iconName() {
        return "section-parts";
    }

    @Override
    public String where() {
        return "$.bench.parts";
    }

    @Override
    public String summary(Project project) {
        int count = project.bench().parts().stream().mapToInt(Part::count).sum();
        return Texts.counted("parts.summary", count);
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (Part part : project.bench().parts()) {
            String hover = Words.ohms(part.ohms()) + " \u00b1 " + Words.percent(part.toleranceRatio()) + ", "
                    + Words.watts(part.ratedWatts()) + ", " + Words.of(part.mounting());
            String label = part.count() + " \u00d7 " + part.id();
            items.add(new SectionItem(label, hover, "$.bench.parts[" + items.size() + "]"));
        }
        return items;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "parts");
        page.heading(page.body(), Texts.text("parts.heading"));
        NoteLine caution = page.note(page.body(), "caution");
        page.add(project -> caution.show(Severity.WARNING, caution(project)));
        page.part(() -> table(page));
        return page.start();
    }

    private static void table(FormPage page) {
        page.table(
                page.body(), spec(), "$.bench.parts", project -> project.bench().parts(), (project, rows) -> {
                    RowIds.refuseDoubles(project.bench().parts(), rows, Part::id);
                    return project.withBench(project.bench().withParts(rows));
                });
    }

    private static String caution(Project project) {
        return project.bench().parts().stream().mapToDouble(Part::zeroPowerCelsius).max().stream()
                .mapToObj(hottest -> Texts.text("parts.caution", Words.number(hottest)))
                .findFirst()
                .orElse("");
    }

    static TableSpec<Part> spec() {
        return TableSpec.of("parts", Texts.text("table.part"), Texts.text("table.parts"), columns())
                .withEditNames(Texts.edits("part"))
                .withNewRow(rows -> new Part(
                        FreshIds.numbered("part", rows.stream().map(Part::id).toList()),
                        8,
                        0.05,
                        100,
                        25,
                        250,
                        Mounting.HEAT_SINK,
                        1))
                .withDuplicate((part, rows) -> part.withId(
                        FreshIds.freeOf(part.id(), rows.stream().map(Part::id).toList())))
                .withKey(Part::id);
    }

    private static List<Column<Part>> columns() {
        List<Column<Part>> columns = new ArrayList<>(usualColumns());
        columns.addAll(PartTraitColumns.all());
        return columns;
    }

    private static List<Column<Part>> usualColumns() {
        return List.of(
                Columns.requiredText("id", Texts.text("table.id"), Part::id, Part::withId),
                Columns.integer("count", Texts.text("part.count"), 1, 10_000, Part::count, Part::withCount),
                Columns.quantity("ohms", Texts.text("part.ohms"), Measure.of(Unit.OHM), Part::ohms, Part::withOhms)
                        .withHover(PartsPage::resistanceHover),
                Columns.percent(
                        "toleranceRatio", Texts.text("part.tolerance"), Part::toleranceRatio, Part::withToleranceRatio),
                Columns.quantity(
                        "ratedWatts",
                        Texts.text("part.rated"),
                        Measure.of(Unit.WATT),
                        Part::ratedWatts,
                        Part::withRatedWatts),
                Columns.quantity(
                                "ratedToCelsius",
                                Texts.text("part.ratedto"),
                                Measure.of(Unit.CELSIUS),
                                Part::ratedToCelsius,
                                (part, value) -> part.withRatedToCelsius(below(value, part.zeroPowerCelsius())))
                        .withHover(part -> Texts.text("part.ratedto.hover")),
                Columns.quantity(
                                "zeroPowerCelsius",
                                Texts.text("part.zero"),
                                Measure.of(Unit.CELSIUS),
                                Part::zeroPowerCelsius,
                                (part, value) -> part.withZeroPowerCelsius(above(value, part.ratedToCelsius())))
                        .withHover(part -> Texts.text("part.zero.hover")),
                Columns.choice(
                                "mounting",
                                Texts.text("part.mounting"),
                                List.of(Mounting.values()),
                                Words::of,
                                Part::mounting,
                                Part::withMounting)
                        .withWidth(18));
    }

    private static String resistanceHover(Part part) {
        return Texts.text(
                "part.ohms.hover",
                Words.ohms(part.ohms()),
                Words.ohms(part.ohms() * part.toleranceRatio()),
                Words.ohms(Coverage.expanded(part.ohms() * part.toleranceRatio() / Math.sqrt(3))),
                Coverage.words());
    }

    private static double below(double value, double limit) {
        if (value >= limit) {
            throw new IllegalArgumentException(Texts.text("part.ratedto.refused", Words.number(limit)));
        }
        return value;
    }

    private static double above(double value, double limit) {
        if (value <= limit) {
            throw new IllegalArgumentException(Texts.text("part.zero.refused", Words.number(limit)));
        }
        return value;
    }
}
