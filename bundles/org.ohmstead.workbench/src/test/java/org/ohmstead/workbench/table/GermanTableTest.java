// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Numbers;

/** A table as it is shown to those who read German. */
class GermanTableTest {
    private String before;

    @BeforeEach
    void speakGerman() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
        Numbers.useLanguagesSign();
    }

    @AfterEach
    void asUsual() {
        Numbers.useDecimalComma(false);
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void anEmptyTableSaysInGermanWhatToDo() {
        try (TableStage stage = new TableStage()) {
            assertEquals(
                    "Noch keine ratings. Mit Einfg hinzuf\u00fcgen oder aus einer Tabellenkalkulation einf\u00fcgen.",
                    stage.find("empty", Label.class).getText());
            assertEquals(
                    "rating hinzuf\u00fcgen (Einfg)",
                    stage.find("add", ToolItem.class).getToolTipText());
            assertEquals("Filtern (Strg+F)", stage.find("filter", Text.class).getMessage());
        }
    }

    @Test
    void changesHaveGermanNamesAndNumbersAComma() {
        try (TableStage stage = new TableStage(Claim.of("A", 2.5, 50), Claim.of("B", 4, 50))) {
            assertEquals("2,5", stage.cell(0, 2));
            stage.table.select(0, "name");
            stage.press(SWT.DEL);
            assertEquals(List.of("rating entfernen"), stage.names);
            stage.find("filter", Text.class).setText("nirgends");
            stage.pump();
            assertEquals(
                    "1 ratings, aber keine Zeile passt zu \u201enirgends\u201c. Escape im Filter zeigt wieder alle.",
                    stage.find("empty", Label.class).getText());
        }
    }

    @Test
    void eachKeyOfTheContextMenuLeadsToOneEntry() {
        try (TableStage stage = new TableStage()) {
            Set<Character> taken = new HashSet<>();
            MenuItem[] items = stage.table.table().getMenu().getItems();
            for (MenuItem item : items) {
                int mnemonic = item.getText().indexOf('&');
                if (mnemonic >= 0) {
                    char letter = Character.toLowerCase(item.getText().charAt(mnemonic + 1));
                    assertTrue(taken.add(letter), item.getText() + " takes " + letter + " a second time");
                }
            }
            assertEquals(
                    Arrays.stream(items)
                            .filter(item -> (item.getStyle() & SWT.SEPARATOR) == 0)
                            .count(),
                    taken.size());
        }
    }

    @Test
    void checkMarksAndChoicesAreSaidInGerman() {
        assertEquals("ja", CellEdit.yes());
        assertEquals("nein", CellEdit.no());
    }
}
