// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench;

import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.ohmstead.workbench.internal.part.SectionEditor;
import org.ohmstead.workbench.internal.part.SectionInput;
import org.ohmstead.workbench.internal.part.SectionServices;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProblemPlace;

/** Opens places of the open project: a page of the project, a row or field on it, the test log. */
public final class Sections {
    /** The place that is shown first when a project was opened. */
    public static final String FIRST = "$.amplifier";

    private static final String LOG_VIEW = "org.ohmstead.testlog.ui.log";

    private Sections() {}

    /**
     * Shows a place and puts the keyboard there.
     *
     * @param page the workbench page to show it on
     * @param where JSON path into the project as in {@link org.ohmstead.model.Problem#where}, or {@code log.db} with or without the id of
     *     an entry; anything else is left alone
     */
    public static void open(IWorkbenchPage page, String where) {
        ProblemPlace place = ProblemPlace.parse(where);
        try {
            if (place.section() == ProblemPlace.Section.LOG) {
                page.showView(LOG_VIEW);
                return;
            }
            Optional<SectionPage> section = SectionServices.pages().pageFor(where);
            if (section.isPresent()) {
                open(page, section.get(), Optional.of(where));
            }
        } catch (PartInitException e) {
            ILog.of(Sections.class).error("The place " + where + " could not be shown. " + e.getMessage(), e);
        }
    }

    /**
     * Opens a page of the project.
     *
     * @param page the workbench page to show it on
     * @param section what to show
     * @param where the place on it, empty for the page as a whole
     * @throws PartInitException when the editor cannot be opened
     */
    public static void open(IWorkbenchPage page, SectionPage section, Optional<String> where) throws PartInitException {
        page.setEditorAreaVisible(true);
        IEditorPart editor = page.openEditor(new SectionInput(section), SectionEditor.ID);
        if (where.isPresent() && editor instanceof SectionEditor shown) {
            shown.reveal(ProblemPlace.parse(where.get()));
        }
    }
}
