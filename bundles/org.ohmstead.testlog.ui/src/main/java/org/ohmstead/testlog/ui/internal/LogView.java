// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;
import org.osgi.service.prefs.BackingStoreException;

/** Shows the test log in the workbench. */
public final class LogView extends ViewPart {
    private static final String NODE = "org.ohmstead.testlog.ui";
    private static final String OPERATOR = "operator";
    private static final String FILTERS = "filters";

    private LogComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        content = new LogComposite(
                parent,
                desk,
                LogSearch.of(desk),
                new LogComposite.Keeping(new KeptOperator(), new KeptFilters(), this::compare));
        ProjectCommands.help(content, "log_view");
    }

    private void compare() {
        try {
            getSite().getPage().showView(PairView.ID);
        } catch (PartInitException failure) {
            ILog.of(LogView.class).error("The view of two readings did not open.", failure);
        }
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }

    /** Keeps the name with the settings of the workbench. */
    private static final class KeptOperator implements OperatorMemory {
        private final IEclipsePreferences settings = InstanceScope.INSTANCE.getNode(NODE);

        @Override
        public String name() {
            return settings.get(OPERATOR, "");
        }

        @Override
        public void keep(String name) {
            settings.put(OPERATOR, name);
        }
    }

    /** Keeps the filters with the settings of the workbench. */
    private static final class KeptFilters implements SavedFilters {
        private final IEclipsePreferences settings = InstanceScope.INSTANCE.getNode(NODE);

        @Override
        public List<Saved> all() {
            String text = settings.get(FILTERS, null);
            return text == null ? SavedFilters.usual() : SavedFilters.ofText(text);
        }

        @Override
        public void keep(List<Saved> filters) {
            settings.put(FILTERS, SavedFilters.toText(filters));
            flush(settings);
        }
    }

    private static void flush(IEclipsePreferences settings) {
        try {
            settings.flush();
        } catch (BackingStoreException failure) {
            ILog.of(LogView.class).error("The settings of the test log were not kept.", failure);
        }
    }
}
