// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.util.Optional;
import org.eclipse.e4.ui.model.application.MApplication;
import org.eclipse.e4.ui.model.application.ui.MUILabel;
import org.eclipse.e4.ui.model.application.ui.advanced.MPerspective;
import org.eclipse.e4.ui.model.application.ui.basic.MPart;
import org.eclipse.e4.ui.workbench.modeling.EModelService;
import org.eclipse.ui.IPerspectiveDescriptor;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.views.IViewDescriptor;

/**
 * Names perspectives and views in the language that is spoken now. The platform keeps their names with the layout, in the language of the
 * day they were first shown.
 */
final class SpokenLabels {
    private SpokenLabels() {}

    /** Renews the names in the layout that was restored; to be called before its windows open. */
    static void renew(IWorkbench workbench) {
        MApplication application = workbench.getService(MApplication.class);
        EModelService model = workbench.getService(EModelService.class);
        for (MPerspective perspective : model.findElements(application, null, MPerspective.class)) {
            name(
                    perspective,
                    Optional.ofNullable(workbench
                                    .getPerspectiveRegistry()
                                    .findPerspectiveWithId(perspective.getElementId()))
                            .map(IPerspectiveDescriptor::getLabel));
        }
        for (MPart part : model.findElements(application, null, MPart.class)) {
            name(
                    part,
                    Optional.ofNullable(workbench.getViewRegistry().find(part.getElementId()))
                            .map(IViewDescriptor::getLabel));
        }
    }

    private static void name(MUILabel element, Optional<String> spoken) {
        if (spoken.isPresent() && !spoken.get().equals(element.getLabel())) {
            element.setLabel(spoken.get());
        }
    }
}
