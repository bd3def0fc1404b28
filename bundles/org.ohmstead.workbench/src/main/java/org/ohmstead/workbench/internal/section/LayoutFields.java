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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.session.ProjectDesk;

/** The fields for how the sheet looks. */
final class LayoutFields {
    private static final String WHERE = "$.sheet.layout.";

    private final FormPage page;
    private final Messages messages = Messages.of(LayoutFields.class);

    LayoutFields(FormPage page) {
        this.page = page;
    }

    String text(String key, Object... arguments) {
        return messages.text(key, arguments);
    }

    /** Adds what stands in the head beside the laboratory's name. */
    void addHead(FormSection form) {
        bind(form.lines("address", text("layout.address")), "address", SheetLayout::address, SheetLayout::withAddress);
        bind(form.lines("contact", text("layout.contact")), "contact", SheetLayout::contact, SheetLayout::withContact);
        Field<String> accreditation = form.text("accreditation", text("layout.accreditation"));
        accreditation.setHint(text("layout.accreditation.hint"));
        bind(accreditation, "accreditation", SheetLayout::accreditation, SheetLayout::withAccreditation);
    }

    /** Adds design, paper and logo. */
    void addLook(FormSection form, ProjectDesk desk) {
        bind(
                form.choice(
                        "design",
                        text("layout.design"),
                        List.of(SheetDesign.values()),
                        design -> text("layout.design." + design)),
                "design",
                SheetLayout::design,
                SheetLayout::withDesign);
        bind(
                form.choice(
                        "paper",
                        text("layout.paper"),
                        List.of(PaperSize.values()),
                        paper -> text("layout.paper." + paper)),
                "paper",
                SheetLayout::paper,
                SheetLayout::withPaper);
        Field<String> logo = form.text("logo", text("layout.logo"));
        logo.setHint(text("layout.logo.hint"));
        logo.check(file -> {
            if (!isInside(file)) {
                throw new IllegalArgumentException(text("layout.logo.inside"));
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
        Field<String> projects = form.lines("projects", text("compare.projects"));
        projects.setHint(text("compare.projects.hint"));
        bind(
                projects,
                "comparedProjects",
                layout -> String.join("\n", layout.comparedProjects()),
                (layout, typed) -> layout.withComparedProjects(lines(typed)));
        Field<String> periods = form.lines("periods", text("compare.periods"));
        periods.setHint(text("compare.periods.hint"));
        bind(
                periods,
                "comparedPeriods",
                layout -> String.join("\n", layout.comparedPeriods()),
                (layout, typed) -> layout.withComparedPeriods(lines(typed)));
        form.note(text("compare.note"));
    }

    private static List<String> lines(String typed) {
        return Arrays.stream(typed.split("\\R"))
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** Returns the name of the edit that changes a field of the layout. */
    static String editName(String name) {
        return "Set sheet " + PlaceWords.field("layout." + name);
    }

    /** Returns a project with another logo. */
    static Project withLogo(Project project, String file) {
        return with(project, project.sheet().layout().withLogoFile(file));
    }

    private static Project with(Project project, SheetLayout layout) {
        return project.withSheet(project.sheet().withLayout(layout));
    }

    private <T> void bind(
            Field<T> field, String name, Function<SheetLayout, T> get, BiFunction<SheetLayout, T, SheetLayout> with) {
        page.bind(
                field,
                WHERE + name,
                editName(name),
                project -> get.apply(project.sheet().layout()),
                (project, value) -> with(project, with.apply(project.sheet().layout(), value)));
    }
}
