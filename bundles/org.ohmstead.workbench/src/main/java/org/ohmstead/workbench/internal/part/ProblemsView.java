// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.Sections;
import org.ohmstead.workbench.internal.section.ProblemsComposite;
import org.ohmstead.workbench.session.ProjectDesk;

/** What is wrong or risky in the open project, with remedies and jumps. */
public final class ProblemsView extends ViewPart {
    private ProblemsComposite problems;

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        problems = new ProblemsComposite(
                parent, desk, problem -> Sections.open(getSite().getPage(), problem.where()));
        ProjectCommands.help(problems, "problems");
    }

    @Override
    public void setFocus() {
        problems.setFocus();
    }
}
