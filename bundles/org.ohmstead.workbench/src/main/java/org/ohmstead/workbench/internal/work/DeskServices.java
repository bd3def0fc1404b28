// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.work;

import java.time.Clock;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.preference.IPreferenceStore;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchListener;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.services.AbstractServiceFactory;
import org.eclipse.ui.services.IServiceLocator;
import org.ohmstead.workbench.WorkbenchPreferences;
import org.ohmstead.workbench.internal.command.ProjectOpening;
import org.ohmstead.workbench.internal.part.SectionServices;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;

/** Gives every part of the workbench the one desk, by {@code getSite().getService(ProjectDesk.class)}. */
public final class DeskServices extends AbstractServiceFactory {
    private ProjectDesk desk;

    @Override
    @SuppressWarnings("rawtypes") // as the platform declares it
    public Object create(Class serviceInterface, IServiceLocator parentLocator, IServiceLocator locator) {
        if (serviceInterface != ProjectDesk.class) {
            return null;
        }
        // A part's or window's locator asks its parent first, so that all windows share one desk.
        Object shared = parentLocator.getService(ProjectDesk.class);
        if (shared != null) {
            return shared;
        }
        synchronized (this) {
            if (desk == null) {
                desk = start(new ProjectDesk(new PlatformWork(Display.getDefault()), Clock.systemDefaultZone()));
            }
            return desk;
        }
    }

    /** Has the desk show numbers as the preferences say, now and whenever they are changed. */
    static void followPreferences(ProjectDesk desk, IPreferenceStore store) {
        desk.setDisplay(display(store));
        // A change may come from any thread, and restoring the defaults changes both values one after the other.
        store.addPropertyChangeListener(change -> {
            if (change.getProperty().equals(WorkbenchPreferences.COVERAGE_FACTOR)
                    || change.getProperty().equals(WorkbenchPreferences.DECIMAL_COMMA)) {
                desk.work().later(() -> desk.setDisplay(display(store)));
            }
        });
    }

    /**
     * Returns what the preferences say: the usual factor where a foreign hand wrote one that cannot be chosen, and the language's decimal
     * sign unless one was chosen.
     */
    private static DisplaySettings display(IPreferenceStore store) {
        int chosenFactor = store.getInt(WorkbenchPreferences.COVERAGE_FACTOR);
        int factor = Coverage.choosable(chosenFactor) ? chosenFactor : Coverage.USUAL_FACTOR;
        return switch (store.getString(WorkbenchPreferences.DECIMAL_COMMA)) {
            case IPreferenceStore.TRUE -> new DisplaySettings(factor, true);
            case IPreferenceStore.FALSE -> new DisplaySettings(factor, false);
            default -> DisplaySettings.asLanguage(factor);
        };
    }

    private static ProjectDesk start(ProjectDesk desk) {
        IWorkbench workbench = PlatformUI.getWorkbench();
        desk.onFault(failure -> ILog.of(DeskServices.class).error("A view or a module failed. " + failure, failure));
        desk.useRecentProjects(ProjectOpening.recent());
        SectionServices.problemProviders().forEach(desk::addProblemProvider);
        desk.listen(new EditMenuTexts(workbench));
        followPreferences(desk, WorkbenchPreferences.store());
        desk.startWatching();
        workbench.addWorkbenchListener(new IWorkbenchListener() {
            @Override
            public boolean preShutdown(IWorkbench closing, boolean forced) {
                return true;
            }

            @Override
            public void postShutdown(IWorkbench closed) {
                desk.dispose();
            }
        });
        return desk;
    }
}
