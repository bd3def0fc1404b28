// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.ui.IPerspectiveDescriptor;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.ohmstead.workbench.look.Ids;

/** The guide as it comes from the installed bundles, and names that come from their texts. */
@SuppressWarnings("restriction") // only the platform's engine knows the names of themes
class GuideTest {
    private final Bench bench = Bench.running();

    @Test
    void thePagesOfTheGuideAreFoundInTheirBundles() throws Exception {
        StyledText page = Ids.find(bench.view("org.ohmstead.app.help"), "help.page", StyledText.class);
        bench.pump()
                .until(
                        () -> page.getText().startsWith("First steps\nTen minutes with the demo"),
                        () -> "The guide shows: " + page.getText());
        bench.page().resetPerspective();
        bench.pump().settle();
    }

    @Test
    void noNameIsAKeyWithoutAText() {
        for (IPerspectiveDescriptor perspective :
                PlatformUI.getWorkbench().getPerspectiveRegistry().getPerspectives()) {
            assertFalse(perspective.getLabel().startsWith("%"), perspective.getId());
        }
        for (var view : PlatformUI.getWorkbench().getViewRegistry().getViews()) {
            assertFalse(view.getLabel().startsWith("%"), view.getId());
        }
        for (var theme :
                PlatformUI.getWorkbench().getService(IThemeEngine.class).getThemes()) {
            assertFalse(theme.getLabel().startsWith("%"), theme.getId());
        }
        assertEquals(
                "Design",
                PlatformUI.getWorkbench()
                        .getPerspectiveRegistry()
                        .findPerspectiveWithId("org.ohmstead.app.design")
                        .getLabel());
    }
}
