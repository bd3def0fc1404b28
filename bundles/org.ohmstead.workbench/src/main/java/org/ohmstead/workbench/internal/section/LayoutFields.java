// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.session.ProjectDesk;

/** The fields for how the sheet looks. */
final class LayoutFields {
    private static final String WHERE = "$.sheet.layout.";
    private static final String EDIT = "sheet.layout.";

    private final FormPage page;

    LayoutFields(FormPage page) {
        this.page = page;
    }

    /** Adds what stands in the head beside the laboratory's name. */
    void addHead(FormSection form) {
        bind(
                form.lines("address", Texts.text("layout.address")),
                "address",
                SheetLayout::address,
                SheetLayout::withAddress);
        bind(
                form.lines("contact", Texts.text("layout.contact")),
                "contact",
                SheetLayout::contact,
                SheetLayout::withContact);
        Field<String> accreditation = form.text("accreditation", Texts.text("layout.accreditation"));
        accreditation.setHint(Texts.text("layout.accreditation.hint"));
        bind(accreditation, "accreditation", SheetLayout::accreditation, SheetLayout::withAccreditation);
    }

    /** Adds design, paper and logo. */
    void addLook(FormSection form, ProjectDesk desk) {
        bind(
                form.choice(
                        "design",
                        Texts.text("layout.design"),
                        List.of(SheetDesign.values()),
                        design -> Texts.text("layout.design." + design)),
                "design",
                SheetLayout::design,
                SheetLayout::withDesign);
        bind(
                form.choice(
                        "paper",
                        Texts.text("layout.paper"),
                        List.of(PaperSize.values()),
                        paper -> Texts.text("layout.paper." + paper)),
                "paper",
                SheetLayout::paper,
                SheetLayout::withPaper);
        Field<String> logo = form.text("logo", Texts.text("layout.logo"));
        logo.setHint(Texts.text("layout.logo.hint"));
        logo.check(file -> {
            if (!isInside(file)) {
                throw new IllegalArgumentException(Texts.text("layout.logo.inside"));
            }
        });
        bind(logo, "logoFile", SheetLayout::logoFile, SheetLayout::withLogoFile);
        new LogoButtons(page, form, desk, this).add();
    }

    private static boolean isInside(String file) {
        try {
            SheetLayout.USUAL.withLogoFile(file);
            return true;
        } catch (IllegalArgumentException outside) {
            return false;
        }
    }

    /** Adds what a comparison takes in. */
    void addComparison(FormSection form) {
        Field<String> projects = form.lines("projects", Texts.text("compare.projects"));
        projects.setHint(Texts.text("compare.projects.hint"));
        bind(
                projects,
                "comparedProjects",
                layout -> String.join("\n", layout.comparedProjects()),
                (layout, typed) -> layout.withComparedProjects(lines(typed)));
        Field<String> periods = form.lines("periods", Texts.text("compare.periods"));
        periods.setHint(Texts.text("compare.periods.hint"));
        bind(
                periods,
                "comparedPeriods",
                layout -> String.join("\n", layout.comparedPeriods()),
                (layout, typed) -> layout.withComparedPeriods(lines(typed)));
        form.note(Texts.text("compare.note"));
    }

    private static List<String> lines(String typed) {
        return Arrays.stream(typed.split("\\R"))
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** Changes the logo alone. */
    void setLogo(String file) {
        page.edit(
                Texts.edit(EDIT + "logoFile"),
                project -> with(project, project.sheet().layout().withLogoFile(file)));
    }

    private static Project with(Project project, SheetLayout layout) {
        return project.withSheet(project.sheet().withLayout(layout));
    }

    private <T> void bind(
            Field<T> field, String name, Function<SheetLayout, T> get, BiFunction<SheetLayout, T, SheetLayout> with) {
        page.bind(
                field,
                WHERE + name,
                Texts.edit(EDIT + name),
                project -> get.apply(project.sheet().layout()),
                (project, value) -> with(project, with.apply(project.sheet().layout(), value)));
    }
}
