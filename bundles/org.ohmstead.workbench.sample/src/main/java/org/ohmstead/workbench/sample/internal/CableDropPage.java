// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.Bench;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.QuantityField;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProblemPlace;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.osgi.service.component.annotations.Component;

/** A page of the project of its own: the supply cable's cross-section, as an edit that can be undone. */
@Component
public final class CableDropPage implements SectionPage {
    private static final Messages TEXTS = Messages.of(CableDropPage.class);
    private static final int AFTER_THE_BUILT_IN_PAGES = 900;

    @Override
    public String id() {
        return "org.ohmstead.workbench.sample.cable";
    }

    @Override
    public String name() {
        return TEXTS.text("cable.name");
    }

    @Override
    public int order() {
        return AFTER_THE_BUILT_IN_PAGES;
    }

    @Override
    public String iconName() {
        return "section";
    }

    @Override
    public String summary(Project project) {
        return Numbers.format("%.2f V", CableDrop.of(project).volts());
    }

    @Override
    public List<SectionItem> items(Project project) {
        return List.of();
    }

    @Override
    public String where() {
        return "$.bench.cable";
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        return new Page(parent, desk);
    }

    private static final class Page implements SectionControl, DeskListener {
        private final ProjectDesk desk;
        private final FormSection form;
        private final QuantityField crossSection;

        Page(Composite parent, ProjectDesk desk) {
            this.desk = desk;
            form = new FormSection(parent, "sample.form", TEXTS.text("cable.name"));
            crossSection = form.quantity("crossSection", TEXTS.text("page.crossSection"), Measure.named("mm\u00b2"));
            crossSection.onCommit(this::change);
            Registration registration = desk.listen(this);
            form.addDisposeListener(event -> registration.close());
            show();
        }

        private void change(double squareMillimetres) {
            desk.session()
                    .ifPresent(session -> session.edit(
                            TEXTS.text("page.change"),
                            project -> project.withBench(with(project.bench(), squareMillimetres))));
        }

        private static Bench with(Bench bench, double squareMillimetres) {
            Cable cable = bench.cable();
            return bench.withCable(new Cable(squareMillimetres, cable.loopMetres(), cable.measuredLoopOhms()));
        }

        private void show() {
            Optional<ProjectSession> session = desk.session();
            form.setReadOnly(session.map(ProjectSession::readOnly).orElse(true));
            session.ifPresent(
                    open -> crossSection.setValue(open.project().bench().cable().crossSectionSquareMillimetres()));
        }

        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            show();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            show();
        }

        @Override
        public Control control() {
            return form;
        }

        @Override
        public void reveal(ProblemPlace place) {
            crossSection.focus();
        }

        @Override
        public void setFocus() {
            crossSection.focus();
        }
    }
}
