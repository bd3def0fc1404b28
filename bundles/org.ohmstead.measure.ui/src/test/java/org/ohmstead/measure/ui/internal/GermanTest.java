// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;

class GermanTest {
    @TempDir
    Path folder;

    private ConsoleStage stage;
    private String before;

    @BeforeEach
    void setUp() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
        stage = new ConsoleStage(folder);
    }

    @AfterEach
    void tearDown() {
        stage.close();
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    private static final class Alone implements ConsoleHost {
        @Override
        public void open(String where) {
            // Nothing else is there.
        }

        @Override
        public void command(String id) {
            // Nothing else is there.
        }

        @Override
        public void show() {
            // It is in sight.
        }
    }

    @Test
    void theConsoleSpeaksGerman() throws Exception {
        stage.open();
        ConsoleComposite console = stage.show(parent -> new ConsoleComposite(parent, stage.runs(), new Alone()));
        stage.until("all is shown", console::upToDate);
        assertEquals("Nicht bereit", stage.said("console.state"));
        stage.ready();
        stage.until(
                "all is shown",
                () -> console.upToDate() && stage.said("console.state").equals("Bereit"));
        Table plan = stage.find("console.plan", Table.class);
        assertEquals("als Nächstes", plan.getItem(0).getText(0));
        assertEquals("Messung", plan.getColumn(2).getText());
        assertEquals(
                "&Nächsten ausführen",
                stage.find("console.run.next", Button.class).getText());
        String summary = stage.said("console.dry.summary");
        assertTrue(summary.startsWith("32 Punkte sind noch zu erledigen: "), summary);
        assertTrue(stage.said("console.cautions").startsWith("Lasten werden zum Verbrennen heiß"));
        assertTrue(stage.said("console.step.connect").startsWith("Last „"), stage.said("console.step.connect"));
    }
}
