// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** What is measured again and again to see whether the bench still is what it was. */
final class CheckStandardsPage implements SectionPage {
    private static final String WHERE = "$.checkStandards";
    private static final int LEAST_WIDTH = 400;

    @Override
    public String id() {
        return "checks";
    }

    @Override
    public String name() {
        return Texts.text("checks.name");
    }

    @Override
    public int order() {
        return 650;
    }

    @Override
    public String iconName() {
        return "section-checks";
    }

    @Override
    public String where() {
        return WHERE;
    }

    @Override
    public String summary(Project project) {
        int count = project.checkStandards().size();
        return count == 0 ? Texts.text("checks.summary.none") : Integer.toString(count);
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (CheckStandard standard : project.checkStandards()) {
            items.add(new SectionItem(standard.id(), standard.name(), WHERE + "[" + items.size() + "]"));
        }
        return items;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "checks");
        page.heading(page.body(), Texts.text("checks.heading"));
        Label note = Ids.name(new Label(page.body(), SWT.WRAP), "checks.note");
        note.setText(Texts.text("checks.note"));
        note.setForeground(Tones.of(note).mutedText());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(note);
        page.part(() -> page.table(
                page.body(),
                CheckStandardTable.spec(page::project),
                WHERE,
                Project::checkStandards,
                (project, rows) -> {
                    RowIds.refuseDoubles(project.checkStandards(), rows, CheckStandard::id);
                    return project.withCheckStandards(rows);
                }));
        return page.start();
    }
}
