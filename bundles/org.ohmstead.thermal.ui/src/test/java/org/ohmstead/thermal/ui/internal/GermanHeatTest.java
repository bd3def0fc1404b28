// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;

/** The views as somebody sees them who reads German. */
class GermanHeatTest {
    @TempDir
    Path folder;

    private String spokenBefore;
    private HeatStage stage;

    @BeforeEach
    void setUp() {
        spokenBefore = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
        stage = new HeatStage(folder);
    }

    @AfterEach
    void tearDown() {
        try {
            stage.desk.setDisplay(DisplaySettings.USUAL);
            stage.close();
        } finally {
            if (spokenBefore == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, spokenBefore);
            }
        }
    }

    private List<String> headers(String id) {
        return Arrays.stream(stage.find(id, Table.class).getColumns())
                .map(TableColumn::getText)
                .toList();
    }

    private Stream<String> names(String id) {
        return Arrays.stream(stage.find(id, Table.class).getItems()).map(item -> item.getText(0));
    }

    @Test
    void forecastsAPlan() throws Exception {
        stage.withProject().open();
        ForecastComposite view =
                stage.show(parent -> new ForecastComposite(parent, stage.desk, (stock, branch) -> List.of()));
        stage.until("the plan is forecast", view::upToDate);
        assertEquals(
                "&Kürzeste Reihenfolge suchen",
                stage.find("forecast.find", Button.class).getText());
        assertTrue(stage.said("forecast.summary").startsWith("Insgesamt "), stage.said("forecast.summary"));
        assertTrue(headers("forecast.table").containsAll(List.of("Schritt", "Pause für")));
        Button notes = stage.find("forecast.notes", Button.class);
        notes.setSelection(true);
        notes.notifyListeners(SWT.Selection, new Event());
        String all = stage.find("forecast.notes.list", Text.class).getText();
        assertTrue(all.contains("Vorsicht: Lastwiderstände und Kühlkörper"), all);
        String sentence =
                stage.find("forecast.strip", ScheduleStrip.class).slots().get(0).sentence();
        assertTrue(sentence.contains("): an ab "), sentence);
    }

    @Test
    void worksAStepOut() throws Exception {
        stage.withProject().open();
        stage.show(parent -> new StepHeatComposite(parent, stage.desk));
        stage.until(
                "the first step is worked out",
                () -> Ids.exists(stage.shell, "calc.table")
                        && names("calc.table").count() > 5);
        assertEquals(List.of("Größe", "Wert", "Einheit", "Bereich", "Worauf es beruht"), headers("calc.table"));
        assertTrue(names("calc.table").anyMatch("Heißeste Sperrschicht am Ende"::equals));
        String summary = stage.said("calc.summary");
        assertTrue(summary.contains("; Gehäuse ") && summary.contains(" aus der Versorgung"), summary);
        Combo step = stage.find("calc.step", Combo.class);
        assertEquals("frei eingegeben", step.getItem(0));
        assertEquals("gebrückt", stage.find("calc.mode", Combo.class).getItem(1));
    }

    @Test
    void fitsAWarmUp() {
        stage.show(parent -> new IdentifyComposite(parent, stage.desk));
        stage.until("the view is made", () -> Ids.exists(stage.shell, "identify.use"));
        assertEquals("Noch ist nichts angepasst.", stage.said("identify.reason"));
        stage.find("identify.record", Text.class).setText("0;25\n60;26");
        stage.until("the record was read", () -> stage.said("identify.message")
                .startsWith("Die Aufzeichnung hat 2 Ablesungen"));
        stage.find("identify.record", Text.class).setText("0;25\n60;warm");
        stage.until("the record was read", () -> stage.said("identify.message")
                .startsWith("Zeile 2: „warm“ ist keine Temperatur"));
    }

    @Test
    void takesWhatIsKnownOfHeat() throws Exception {
        stage.withProject().open();
        HeatPage page = new HeatPage();
        stage.show(parent -> page.create(parent, stage.desk));
        stage.until("the page is made", () -> Ids.exists(stage.shell, "heat.case"));
        stage.shell.layout(true);
        assertEquals("Klasse AB, Gehäuse bekannt", page.summary(stage.project()));
        assertEquals("0.4 bis 0.5", stage.text("heat.case"));
        stage.type("heat.case", "0,42 bis 0,48 K/W");
        assertEquals("0.42 bis 0.48", stage.text("heat.case"));
        assertEquals(
                "Wärmewiderstand vom Gehäuse zur Luft setzen",
                stage.desk.session().orElseThrow().undoName().orElseThrow());
    }
}
