// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** The steps that are run, in their order, and the block of steps that can be added at once. */
final class PlanPage implements SectionPage {
    @Override
    public String id() {
        return "plan";
    }

    @Override
    public String name() {
        return Texts.text("plan.name");
    }

    @Override
    public int order() {
        return 500;
    }

    @Override
    public String iconName() {
        return "section-plan";
    }

    @Override
    public String where() {
        return "$.plan";
    }

    @Override
    public String summary(Project project) {
        return Texts.counted("plan.summary", project.plan().size());
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (Step step : project.plan()) {
            String hover = Texts.text(
                    "plan.step.hover",
                    Words.of(step.mode()),
                    step.loadId(),
                    Words.volts(step.supplyVolts()),
                    Words.of(step.stimulus()),
                    Words.of(step.endPoint()));
            items.add(new SectionItem(step.id(), hover, "$.plan[" + items.size() + "]"));
        }
        return items;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "plan");
        Composite head = new Composite(page.body(), SWT.NONE);
        Spacing.group(2).applyTo(head);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(head);
        page.heading(head, Texts.text("plan.heading"));
        Button toggle = Buttons.toggle(head, "plan.addsteps", Texts.text("plan.addsteps"));
        Composite place = new Composite(page.body(), SWT.NONE);
        Spacing.group(1).applyTo(place);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(place);
        place.setVisible(false);
        toggle.setToolTipText(Texts.text("plan.addsteps.hint"));
        page.add(new AddSteps(page, toggle, place));
        page.part(() -> {
            NoteLine caution = page.note(page.body(), "caution");
            page.add(project -> caution.show(Severity.WARNING, caution(project)));
        });
        page.part(() ->
                page.table(page.body(), StepTable.spec(page::project), "$.plan", Project::plan, (project, rows) -> {
                    RowIds.refuseDoubles(project.plan(), rows, Step::id);
                    return project.withPlan(rows);
                }));
        return page.start();
    }

    private static String caution(Project project) {
        List<Step> low = project.plan().stream()
                .filter(step -> PlanMatrix.belowLowest(project, step.mode(), step.loadId()))
                .toList();
        if (low.isEmpty()) {
            return "";
        }
        long confirmed = low.stream().filter(Step::belowLowestLoadConfirmed).count();
        String told = confirmed == low.size()
                ? Texts.text("plan.caution.all")
                : Texts.text("plan.caution.some", Long.toString(confirmed));
        return Texts.counted("plan.caution", low.size(), told);
    }

    /** The panel for adding steps, which is made when it is first wanted, and the button that opens it. */
    private static final class AddSteps implements Binding {
        private final FormPage page;
        private final Button toggle;
        private final Composite place;
        private Optional<AddStepsPanel> panel = Optional.empty();
        private boolean readOnly;

        AddSteps(FormPage page, Button toggle, Composite place) {
            this.page = page;
            this.toggle = toggle;
            this.place = place;
            toggle.addListener(SWT.Selection, event -> show(toggle.getSelection()));
        }

        private AddStepsPanel make() {
            AddStepsPanel made = new AddStepsPanel(place, page, () -> show(false));
            GridDataFactory.fillDefaults().grab(true, false).applyTo(made);
            page.project().ifPresent(made::showProject);
            made.setReadOnly(readOnly);
            return made;
        }

        private void show(boolean visible) {
            if (visible && panel.isEmpty()) {
                panel = Optional.of(make());
            }
            toggle.setSelection(visible);
            ((GridData) place.getLayoutData()).exclude = !visible;
            place.setVisible(visible);
            page.body().layout(true, true);
            page.fit();
            if (visible) {
                panel.ifPresent(AddStepsPanel::setFocus);
            } else {
                toggle.setFocus();
            }
        }

        @Override
        public void showProject(Project project) {
            panel.ifPresent(shown -> shown.showProject(project));
        }

        @Override
        public void setReadOnly(boolean newReadOnly) {
            readOnly = newReadOnly;
            toggle.setEnabled(!readOnly);
            panel.ifPresent(shown -> shown.setReadOnly(readOnly));
        }
    }
}
