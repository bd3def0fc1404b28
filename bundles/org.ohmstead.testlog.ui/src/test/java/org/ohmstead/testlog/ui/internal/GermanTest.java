// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;

/** The views of the log in German. */
class GermanTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void speakGerman() {
        System.setProperty(Language.PROPERTY, "de");
        bench = new Bench(folder);
    }

    @AfterEach
    void speakAsBefore() {
        try {
            bench.close();
        } finally {
            System.clearProperty(Language.PROPERTY);
        }
    }

    private Table table(String id) {
        return bench.find(id, Table.class);
    }

    @Test
    void theLogSpeaksGerman() throws Exception {
        bench.withLog(Samples.six()).open().show();
        Table log = table("log.table");
        assertEquals("Leistung (W)", log.getColumn(LogColumn.POWER.ordinal()).getText());
        assertEquals("g\u00fcltig", log.getItem(0).getText(LogColumn.STATE.ordinal()));
        assertEquals("gebr\u00fcckt", log.getItem(5).getText(LogColumn.MODE.ordinal()));
        assertEquals("6 von 6", bench.find("log.filter.count", Label.class).getText());
        bench.find("log.filter", Text.class).setText("load:");
        bench.settle();
        String refused = bench.find("log.filter.error", Label.class).getText();
        assertTrue(refused.startsWith("Hinter \u201eload:\u201c steht in der Suche nichts."), refused);
        bench.find("log.filter", Text.class).setText("mode:bridged");
        bench.settle();
        assertEquals("2 von 6", bench.find("log.filter.count", Label.class).getText());
        log.setSelection(0);
        bench.select(log);
        String details = bench.find("log.details", StyledText.class).getText();
        assertTrue(details.contains("Ausgang am Endpunkt"), details);
        assertTrue(details.contains("Ausgangsspannung (Messger\u00e4t)"), details);
    }

    @Test
    void theAuditNamesAFaultInGerman() throws Exception {
        bench.withLog(Samples.six()).open();
        new AuditComposite(bench.shell, bench.desk);
        bench.shell.open();
        bench.settle();
        Tampering.changeThird(bench.logFile());
        bench.select(bench.find("audit.verify", Button.class));
        String result = bench.find("audit.result", Label.class).getText();
        assertTrue(result.startsWith("Nicht unversehrt: "), result);
        String faults = bench.find("audit.faults", Label.class).getText();
        assertTrue(faults.startsWith("Der Eintrag R0003, Nummer 3 des Protokolls, wurde ver\u00e4ndert"), faults);
    }

    @Test
    void twoReadingsAreComparedInGerman() throws Exception {
        bench.withLog(Samples.six()).open();
        new PairComposite(bench.shell, bench.desk);
        bench.shell.open();
        bench.settle();
        PairChoice.of(bench.desk).choose("R0001", "R0002");
        bench.settle();
        assertEquals("Zweite minus erste", table("pair.table").getColumn(3).getText());
        assertEquals("Ergebnis", table("pair.table").getItem(0).getText());
    }
}
