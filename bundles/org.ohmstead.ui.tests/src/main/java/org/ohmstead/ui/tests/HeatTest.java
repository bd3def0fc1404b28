// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Pacing;

/** The forecast of heat in the running workbench, where the loads' parts come from a service of another module. */
class HeatTest {
    private static final String FORECAST = "org.ohmstead.thermal.ui.forecast";

    private final Bench bench = Bench.running();

    @TempDir
    Path folder;

    @BeforeEach
    void open() throws Exception {
        bench.perspective("org.ohmstead.app.bench");
        bench.openCopy(folder);
        bench.view(FORECAST);
    }

    @AfterEach
    void close() throws Exception {
        bench.close();
        bench.reportStalls(getClass().getSimpleName());
    }

    private String summary() {
        return bench.find("forecast.summary", Label.class).getText();
    }

    @Test
    void theForecastKnowsThePartsOfTheLoads() {
        bench.pump().until(() -> summary().startsWith("In all "), () -> "No forecast is shown: " + summary());
        // Its derating line is all that the demo says of this part; without the service the part would not be there.
        String notes = bench.find("forecast.notes.list", Text.class).getText();
        assertTrue(notes.contains("\"8R-250W\""), notes);
    }

    @Test
    void theForecastFollowsTheProject() throws Exception {
        bench.pump().until(() -> summary().startsWith("In all "), () -> "No forecast is shown: " + summary());
        String before = summary();
        Pacing pacing = bench.session().project().heat().pacing();
        bench.session()
                .edit(
                        "Set step time",
                        project -> project.withHeat(
                                project.heat().withPacing(pacing.withStepSeconds(2 * pacing.stepSeconds()))));
        bench.pump().until(() -> !summary().equals(before), "The forecast did not follow.");
        assertFalse(summary().isBlank());
        bench.command(IWorkbenchCommandConstants.EDIT_UNDO);
        bench.pump().until(() -> summary().equals(before), () -> "The forecast did not go back: " + summary());
        assertEquals(pacing, bench.session().project().heat().pacing());
    }
}
