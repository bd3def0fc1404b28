// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.ServiceCaller;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchListener;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.services.AbstractServiceFactory;
import org.eclipse.ui.services.IServiceLocator;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.model.PartSharing;
import org.ohmstead.workbench.session.ProjectDesk;

/** Gives every part of the workbench the one desk of runs, by {@code getSite().getService(RunDesk.class)}. */
public final class RunServices extends AbstractServiceFactory {
    private final ServiceCaller<Catalog> catalog = new ServiceCaller<>(RunServices.class, Catalog.class);
    private final ServiceCaller<OperatorQuestions> questions =
            new ServiceCaller<>(RunServices.class, OperatorQuestions.class);
    private final ServiceCaller<PartSharing> sharing = new ServiceCaller<>(RunServices.class, PartSharing.class);
    private RunDesk runs;

    @Override
    @SuppressWarnings("rawtypes") // as the platform declares it
    public Object create(Class serviceInterface, IServiceLocator parentLocator, IServiceLocator locator) {
        if (serviceInterface != RunDesk.class) {
            return null;
        }
        // A part's or window's locator asks its parent first, so that all windows share one desk.
        Object shared = parentLocator.getService(RunDesk.class);
        if (shared != null) {
            return shared;
        }
        synchronized (this) {
            if (runs == null) {
                runs = make(locator.getService(ProjectDesk.class));
            }
            return runs;
        }
    }

    private RunDesk make(ProjectDesk desk) {
        PartSharing parts = (stock, branch) ->
                sharing.current().map(each -> each.shares(stock, branch)).orElse(List.of());
        RunDesk made = new RunDesk(
                desk,
                catalog.current().orElseGet(Catalog::new),
                new JobPlans(parts),
                new KeptMemory(),
                questions.current().orElseGet(OperatorQuestions::new),
                Clock.systemUTC());
        stopByKey(made);
        IWorkbench workbench = PlatformUI.getWorkbench();
        workbench.addWorkbenchListener(new IWorkbenchListener() {
            @Override
            public boolean preShutdown(IWorkbench closing, boolean forced) {
                return true;
            }

            @Override
            public void postShutdown(IWorkbench closed) {
                made.close();
                catalog.unget();
                questions.unget();
                sharing.unget();
            }
        });
        return made;
    }

    /**
     * The key binding does not reach where the workbench does not look for bindings, such as in its own dialogs; this does, and comes
     * after the binding, which leaves nothing of a key that it took.
     */
    private static void stopByKey(RunDesk runs) {
        Display.getDefault().addFilter(SWT.KeyDown, event -> {
            if (stops(event)) {
                event.doit = false;
                event.type = SWT.None;
                runs.emergencyStop();
            }
        });
    }

    private static boolean stops(Event event) {
        boolean space = event.keyCode == ' ' && event.stateMask == (SWT.MOD1 | SWT.MOD2);
        return space || event.keyCode == SWT.PAUSE || event.keyCode == SWT.BREAK;
    }

    /** Returns the desk of a service locator, when there is one. */
    static Optional<RunDesk> of(IServiceLocator locator) {
        return Optional.ofNullable(locator.getService(RunDesk.class));
    }
}
