// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.Platform;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.help.IContext;
import org.eclipse.help.ITopic;
import org.eclipse.help.internal.HelpPlugin;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.ui.IPerspectiveDescriptor;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.ohmstead.workbench.look.Ids;

/** The guide as it comes from the installed bundles, and names that come from their texts. */
@SuppressWarnings(
        "restriction") // only the platform's engines know the names of themes, and the help of another language
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
    void theFirstTestIsShownStepByStep() throws Exception {
        StyledText page = Ids.find(bench.view("org.ohmstead.app.firstTest"), "help.page", StyledText.class);
        assertTrue(page.getText().startsWith("From the amplifier on the table to the sheet in hand\n"), page.getText());
        bench.page().resetPerspective();
        bench.pump().settle();
    }

    /** As the platform looks for it when it starts in German; that this one started in English is no matter. */
    @Test
    void theGuideIsFoundInGermanWhereGermanIsSpoken() throws Exception {
        ITopic[] parts = HelpPlugin.getTocManager().getTocs("de")[0].getTopics();
        assertEquals("Hier anfangen", parts[0].getLabel());
        assertEquals("Erste Schritte", parts[0].getSubtopics()[0].getLabel());
        IContext gain = HelpPlugin.getContextManager().getContext("org.ohmstead.app.gain_view", "de");
        assertTrue(gain.getText().startsWith("Pegel, Empfindlichkeit und Verstärkung"), gain.getText());
        assertEquals("Verstärkung einstellen", gain.getRelatedTopics()[0].getLabel());
        URL page = FileLocator.find(
                Platform.getBundle("org.ohmstead.app"), IPath.forPosix("$nl$/help/gain.html"), Map.of("$nl$", "de"));
        try (InputStream content = page.openStream()) {
            assertTrue(new String(content.readAllBytes(), StandardCharsets.UTF_8)
                    .contains("<h1>Verstärkung einstellen</h1>"));
        }
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
