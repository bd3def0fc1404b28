// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.EditTable;
import org.ohmstead.workbench.table.TableSpec;

/** The bench's loads and their branches. */
final class LoadsPage implements SectionPage {
    private static final int BRANCHES_HEIGHT = 170;

    @Override
    public String id() {
        return "loads";
    }

    @Override
    public String name() {
        return Texts.text("loads.name");
    }

    @Override
    public int order() {
        return 400;
    }

    @Override
    public String iconName() {
        return "section-loads";
    }

    @Override
    public String where() {
        return "$.loads";
    }

    @Override
    public String summary(Project project) {
        return Texts.counted("loads.summary", project.loads().size());
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (BenchLoad load : project.loads()) {
            String hover = Texts.counted(
                    "loads.load.hover",
                    load.branches().size(),
                    Words.ohms(load.nominalOhms()),
                    Words.watts(load.powerLimitWatts()));
            items.add(new SectionItem(load.id(), hover, "$.loads[" + items.size() + "]"));
        }
        return items;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "loads");
        page.heading(page.body(), Texts.text("loads.heading"));
        NoteLine caution = page.note(page.body(), "caution");
        page.add(project -> caution.show(Severity.WARNING, caution(project)));
        NoteLine missing = page.note(page.body(), "missing");
        page.add(project -> missing.show(Severity.ERROR, missing(project)));
        List<EditTable<BenchLoad>> loads = new ArrayList<>();
        page.part(() -> loads.add(page.table(page.body(), spec(), "$.loads", Project::loads, LoadsPage::withLoads)));
        page.part(() -> branches(page, loads.get(0)));
        return page.start();
    }

    private static void branches(FormPage page, EditTable<BenchLoad> loads) {
        Label heading = page.heading(page.body(), Texts.text("branch.heading"));
        EditTable<LoadBranch> branches = new EditTable<>(page.body(), BranchBinding.spec());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SWT.DEFAULT, BRANCHES_HEIGHT)
                .applyTo(branches);
        page.add(new BranchBinding(page, loads, heading, branches));
    }

    private static String caution(Project project) {
        return project.loads().stream().mapToDouble(BenchLoad::powerLimitWatts).max().stream()
                .mapToObj(most -> Texts.text("loads.caution", Words.watts(most)))
                .findFirst()
                .orElse("");
    }

    private static String missing(Project project) {
        List<Step> lost = project.plan().stream()
                .filter(step -> project.load(step.loadId()).isEmpty())
                .toList();
        if (lost.isEmpty()) {
            return "";
        }
        String names = lost.stream().map(Step::loadId).distinct().collect(Collectors.joining(", "));
        return Texts.counted("loads.missing", lost.size(), names);
    }

    /** Puts other loads in place; steps follow a load that got another id. */
    private static Project withLoads(Project project, List<BenchLoad> rows) {
        RowIds.refuseDoubles(project.loads(), rows, BenchLoad::id);
        Map<String, String> renamed = RowIds.renamed(project.loads(), rows, BenchLoad::id);
        List<Step> plan = project.plan().stream()
                .map(step -> step.withLoadId(renamed.getOrDefault(step.loadId(), step.loadId())))
                .toList();
        return project.withLoads(rows).withPlan(plan);
    }

    static TableSpec<BenchLoad> spec() {
        return TableSpec.of(
                        "loads",
                        Texts.text("table.load"),
                        Texts.text("table.loads"),
                        List.of(
                                Columns.requiredText("id", Texts.text("table.id"), BenchLoad::id, BenchLoad::withId)
                                        .withHover(load -> Texts.text("load.id.hover")),
                                Columns.quantity(
                                        "nominalOhms",
                                        Texts.text("load.nominal"),
                                        Measure.of(Unit.OHM),
                                        BenchLoad::nominalOhms,
                                        BenchLoad::withNominalOhms),
                                Columns.quantity(
                                                "powerLimitWatts",
                                                Texts.text("load.limit"),
                                                Measure.of(Unit.WATT),
                                                BenchLoad::powerLimitWatts,
                                                BenchLoad::withPowerLimitWatts)
                                        .withHover(load -> Texts.text("load.limit.hover")),
                                Columns.shown("branches", Texts.text("load.measured"), LoadsPage::measured)
                                        .withWidth(34)
                                        .withHover(LoadsPage::measuredHover)))
                .withEditNames(Texts.edits("load"))
                .withNewRow(rows -> new BenchLoad(
                        FreshIds.numbered(
                                "load", rows.stream().map(BenchLoad::id).toList()),
                        4,
                        List.of(new LoadBranch(4, 0.004, 0, ""), new LoadBranch(4, 0.004, 0, "")),
                        100))
                .withDuplicate((load, rows) -> load.withId(FreshIds.freeOf(
                        load.id(), rows.stream().map(BenchLoad::id).toList())))
                .withKey(BenchLoad::id);
    }

    private static String measured(BenchLoad load) {
        return load.branches().stream()
                        .map(branch -> Words.number(branch.ohms()))
                        .collect(Collectors.joining(", "))
                + " \u03a9";
    }

    private static String measuredHover(BenchLoad load) {
        return load.branches().stream().map(BranchBinding::measured).collect(Collectors.joining("\n"));
    }
}
