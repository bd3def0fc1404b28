// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** What the results sheet says beside the results, and how sure a verdict must be. */
final class SheetPage implements SectionPage {
    private static final int LEAST_WIDTH = 460;
    private static final double LEAST_CONFIDENCE = 0.5;
    private static final double MOST_CONFIDENCE = 0.9999;

    @Override
    public String id() {
        return "sheet";
    }

    @Override
    public String name() {
        return Texts.text("sheet.name");
    }

    @Override
    public int order() {
        return 600;
    }

    @Override
    public String iconName() {
        return "section-sheet";
    }

    @Override
    public String where() {
        return "$.sheet";
    }

    @Override
    public String summary(Project project) {
        return Texts.text("sheet.summary", Words.percent(project.sheet().confidence()));
    }

    @Override
    public List<SectionItem> items(Project project) {
        return List.of();
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "sheet");
        Composite top = new Composite(page.body(), SWT.NONE);
        top.setLayout(new FlowColumns(LEAST_WIDTH, 2));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        page.part(() -> head(page, top));
        page.part(() -> verdicts(page, top));
        LayoutFields layout = new LayoutFields(page);
        page.part(() -> layout.addLook(new FormSection(top, "sheet.look", Texts.text("layout.heading")), desk));
        page.part(() -> layout.addComparison(new FormSection(top, "sheet.compare", Texts.text("compare.heading"))));
        return page.start();
    }

    private static void head(FormPage page, Composite top) {
        FormSection head = new FormSection(top, "sheet", Texts.text("sheet.heading"));
        Field<String> title = head.requiredText("title", Texts.text("sheet.title"));
        page.bind(title, "$.title", Texts.edit("project.title"), Project::title, Project::withTitle);
        bind(
                page,
                head.text("laboratory", Texts.text("sheet.laboratory")),
                "laboratory",
                SheetSettings::laboratory,
                SheetSettings::withLaboratory);
        new LayoutFields(page).addHead(head);
        bind(
                page,
                head.text("preparedby", Texts.text("sheet.preparedby")),
                "preparedBy",
                SheetSettings::preparedBy,
                SheetSettings::withPreparedBy);
        bind(
                page,
                head.lines("remarks", Texts.text("sheet.remarks")),
                "remarks",
                SheetSettings::remarks,
                SheetSettings::withRemarks);
    }

    private static void verdicts(FormPage page, Composite top) {
        FormSection verdicts = new FormSection(top, "sheet.verdicts", Texts.text("sheet.verdicts"));
        Field<Double> confidence = verdicts.percent("confidence", Texts.text("sheet.confidence"));
        confidence.check(value -> {
            if (value < LEAST_CONFIDENCE || value > MOST_CONFIDENCE) {
                throw new IllegalArgumentException(Texts.text("sheet.confidence.refused"));
            }
        });
        bind(page, confidence, "confidence", SheetSettings::confidence, SheetSettings::withConfidence);
        verdicts.note(Texts.text("sheet.confidence.note"));
        VerdictFields.add(page, verdicts);
    }

    private static <T> void bind(
            FormPage page,
            Field<T> field,
            String name,
            Function<SheetSettings, T> get,
            BiFunction<SheetSettings, T, SheetSettings> with) {
        page.bind(
                field,
                "$.sheet." + name,
                Texts.edit("sheet." + name),
                project -> get.apply(project.sheet()),
                (project, value) -> project.withSheet(with.apply(project.sheet(), value)));
    }
}
