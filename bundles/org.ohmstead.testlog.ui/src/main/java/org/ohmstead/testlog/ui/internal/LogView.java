// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows the test log in the workbench. */
public final class LogView extends ViewPart {
    private static final String OPERATOR = "operator";

    private LogComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        content = new LogComposite(parent, desk, new KeptOperator());
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }

    /** Keeps the name with the settings of the workbench. */
    private static final class KeptOperator implements OperatorMemory {
        private final IEclipsePreferences settings = InstanceScope.INSTANCE.getNode("org.ohmstead.testlog.ui");

        @Override
        public String name() {
            return settings.get(OPERATOR, "");
        }

        @Override
        public void keep(String name) {
            settings.put(OPERATOR, name);
        }
    }
}
