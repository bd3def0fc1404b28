// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.units.text.Language;

class GermanTest {
    @TempDir
    Path folder;

    private Bench bench;
    private String before;

    @BeforeEach
    void setUp() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.close();
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void saysInGermanWhatToDoWhenThereIsNothing() {
        bench.show();
        String message = bench.find("power.chart", ChartCanvas.class).message().orElse("");
        assertTrue(message.startsWith("Kein Projekt ist offen."), message);
    }

    @Test
    void showsCurvesAndVerdictsInGerman() throws Exception {
        bench.withLog(Samples.many()).open().show();
        Table powers = bench.find("power.powers", Table.class);
        bench.until("the curves are fitted", () -> powers.getItemCount() > 0);
        Table ratings = bench.find("power.ratings", Table.class);
        assertEquals("Urteil", ratings.getColumn(0).getText());
        assertTrue(
                List.of("erfüllt", "nicht erfüllt", "unentschieden", "nicht geprüft")
                        .contains(ratings.getItem(0).getText(0)),
                ratings.getItem(0).getText(0));
        assertEquals(
                "Schwächster Kanal", bench.find("power.channel", Combo.class).getText());
        assertEquals(
                "&Gemeinsame Kurve", bench.find("power.joint", Button.class).getText());
        Table readings = bench.find("power.readings", Table.class);
        bench.until("the readings are listed", () -> readings.getItemCount() > 0);
        assertEquals("Ablesung", readings.getColumn(0).getText());
        assertEquals("ja", readings.getItem(0).getText(4));
    }
}
