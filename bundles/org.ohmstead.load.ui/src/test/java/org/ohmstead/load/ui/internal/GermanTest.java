// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;

class GermanTest extends LoadDesignStage {
    private String before;

    @BeforeEach
    void speakGerman() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
    }

    @AfterEach
    void speakAsBefore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    private String said(String id) {
        return bench.find(id, Label.class).getText();
    }

    @Test
    void theDesignSpeaksGerman() throws Exception {
        found();
        assertEquals(
                "Netzwerke &suchen", bench.find("design.find", Button.class).getText());
        assertEquals("Netzwerk", candidates().getColumn(0).getText());
        assertTrue(said("design.candidates.heading").startsWith("Gefundene Netzwerke ("));
        assertTrue(summary().contains("neben dem Ziel, bis "), summary());
        bench.until("the network is worked out", () -> said("design.caution").contains("abkühlen lassen"));
        assertEquals(
                "Verdrahtungsliste",
                bench.find("design.tabs", CTabFolder.class).getItem(2).getText());
    }

    @Test
    void theBankSpeaksGerman() throws Exception {
        bench.withProject().open().showBank();
        bench.press("bank.find");
        Button plan = bench.find("bank.find", Button.class);
        bench.until("the bank is planned", plan::isEnabled);
        assertEquals("Lastbank &planen", plan.getText());
        assertEquals(
                "Folge",
                bench.find("bank.straps.table", Table.class).getColumn(0).getText());
        String steps = bench.find("bank.steps", StyledText.class).getText();
        assertTrue(steps.startsWith("VORSICHT\n! Den Verstärker ausschalten"), steps);
        assertTrue(steps.contains("\nMESSEN\nZweig 1: zu erwarten sind "), steps);
    }
}
