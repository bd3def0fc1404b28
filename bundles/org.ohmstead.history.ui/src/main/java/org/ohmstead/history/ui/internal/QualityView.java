// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.time.Clock;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.Sections;
import org.ohmstead.workbench.session.ProjectDesk;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/** Shows in the workbench whether the bench still is what it was. */
public final class QualityView extends ViewPart {
    private static final String CHECK_STANDARDS = "$.checkStandards";

    private QualityComposite content;

    @Override
    public void createPartControl(Composite parent) {
        Clock clock = Clock.systemDefaultZone();
        content = new QualityComposite(
                parent,
                getSite().getService(ProjectDesk.class),
                clock,
                new LoggedQuality(clock, version()),
                new PlatformMemory(),
                () -> Sections.open(getSite().getPage(), CHECK_STANDARDS));
        ProjectCommands.help(content, "quality_view");
    }

    private static String version() {
        Version version = FrameworkUtil.getBundle(QualityView.class).getVersion();
        return version.getMajor() + "." + version.getMinor() + "." + version.getMicro();
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
