// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.util.List;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.model.Problem;
import org.ohmstead.workbench.Sections;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows one problem after the other where it can be mended, the first again after the last. */
public final class NextProblem extends DeskHandler {
    private Problem shown;

    @Override
    boolean applies(ProjectDesk desk) {
        return desk.session().isPresent() && !desk.problems().isEmpty();
    }

    @Override
    void run(ProjectDesk desk) {
        List<Problem> problems = desk.problems();
        shown = problems.get((problems.indexOf(shown) + 1) % problems.size());
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
        if (window != null && window.getActivePage() != null) {
            Sections.open(window.getActivePage(), shown.where());
        }
    }
}
