// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.workbench.look.Numbers;

class DisplaySettingsTest extends DeskStage {
    @AfterEach
    void asUsual() {
        desk.setDisplay(DisplaySettings.USUAL);
    }

    @Test
    void theDeskTellsOfAChangeOnceWhenTextsAlreadyFollow() {
        List<String> heard = new ArrayList<>();
        desk.listen(new DeskListener() {
            @Override
            public void displayChanged(DisplaySettings settings) {
                heard.add(settings.coverageWords() + ": " + Numbers.shown(13.8));
            }
        });
        assertEquals(DisplaySettings.USUAL, desk.display());
        desk.setDisplay(DisplaySettings.USUAL);
        desk.setDisplay(new DisplaySettings(3, true));
        desk.setDisplay(new DisplaySettings(3, true));
        assertEquals(List.of("k = 3: 13,8"), heard);
        assertEquals(new DisplaySettings(3, true), desk.display());
    }

    @Test
    void theStatusHasTheDecimalSign() {
        open();
        desk.setDisplay(new DisplaySettings(2, true));
        String sentences = String.join(" ", desk.status().orElseThrow().sentences());
        assertTrue(sentences.contains("22,5 \u00b0C"), sentences);
    }

    @Test
    void refusesAFactorThatCannotBeChosen() {
        assertThrows(IllegalArgumentException.class, () -> new DisplaySettings(4, false));
        assertThrows(IllegalArgumentException.class, () -> new DisplaySettings(0, false));
    }
}
