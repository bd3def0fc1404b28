// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.widgets.Control;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The first use: one click on the welcome page, and the demo's readings come in. */
class DemoTest {
    private final Bench bench = Bench.running();

    @AfterEach
    void close() throws Exception {
        bench.close();
        bench.reportStalls(getClass().getSimpleName());
    }

    @Test
    void oneClickOpensTheDemoAndReplaysIt() throws Exception {
        bench.perspective("org.ohmstead.app.design");
        bench.command("org.ohmstead.app.welcome");
        bench.picture("welcome");
        bench.press(bench.find("welcome.demo", Control.class));
        bench.pump().until(() -> bench.desk().session().isPresent(), "The demo was not opened.");
        bench.awaitEntries(Bench.DEMO_READINGS);
        assertEquals(Bench.DEMO_READINGS, bench.desk().log().validReadings().size());
        assertTrue(bench.shell().getText().contains("Larkspur"), bench.shell().getText());
        assertTrue(
                bench.find("status.log", CLabel.class).getText().contains("32"),
                bench.find("status.log", CLabel.class).getText());
        bench.picture("design-light");
    }
}
