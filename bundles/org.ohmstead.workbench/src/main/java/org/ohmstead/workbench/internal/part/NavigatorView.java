// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.Sections;
import org.ohmstead.workbench.internal.section.NavigatorActions;
import org.ohmstead.workbench.internal.section.NavigatorComposite;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** The open project as a tree. */
public final class NavigatorView extends ViewPart {
    private NavigatorComposite navigator;

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(parent);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(new NoticeStrip(parent, desk));
        navigator = new NavigatorComposite(parent, desk, SectionServices.pages(), new Actions());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(navigator);
        ProjectCommands.help(navigator, "navigator");
    }

    @Override
    public void setFocus() {
        navigator.setFocus();
    }

    private final class Actions implements NavigatorActions {
        @Override
        public void open(SectionPage page, Optional<String> where) {
            try {
                Sections.open(getSite().getPage(), page, where);
            } catch (PartInitException e) {
                ILog.of(NavigatorView.class).error("The page " + page.name() + " could not be opened.", e);
            }
        }

        @Override
        public void openDemo() {
            ProjectCommands.execute(getSite(), ProjectCommands.DEMO);
        }

        @Override
        public void openProject() {
            ProjectCommands.execute(getSite(), ProjectCommands.OPEN);
        }
    }
}
