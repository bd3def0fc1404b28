// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.work;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.function.Consumer;
import org.eclipse.jface.preference.PreferenceStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.WorkbenchPreferences;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;

/** The desk follows the store of the preferences. */
class FollowPreferencesTest {
    private final Queue<Runnable> waiting = new ArrayDeque<>();
    private final PreferenceStore store = new PreferenceStore();
    private final ProjectDesk desk = new ProjectDesk(
            new BackgroundWork() {
                @Override
                public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
                    throw new AssertionError(title);
                }

                @Override
                public void later(Runnable action) {
                    waiting.add(action);
                }
            },
            Clock.systemUTC());

    @BeforeEach
    void fill() {
        store.setDefault(WorkbenchPreferences.COVERAGE_FACTOR, 2);
        store.setDefault(WorkbenchPreferences.DECIMAL_COMMA, false);
    }

    @AfterEach
    void asUsual() {
        desk.setDisplay(DisplaySettings.USUAL);
        desk.dispose();
    }

    private void runWaiting() {
        while (!waiting.isEmpty()) {
            waiting.remove().run();
        }
    }

    @Test
    void readsThemAtTheStartAndFollowsTheirChanges() {
        // As the preference page writes them: as text.
        store.setValue(WorkbenchPreferences.COVERAGE_FACTOR, "3");
        DeskServices.followPreferences(desk, store);
        assertEquals(new DisplaySettings(3, false), desk.display());
        store.setValue(WorkbenchPreferences.DECIMAL_COMMA, "true");
        store.setValue(WorkbenchPreferences.COVERAGE_FACTOR, "1");
        runWaiting();
        assertEquals(new DisplaySettings(1, true), desk.display());
        store.setToDefault(WorkbenchPreferences.COVERAGE_FACTOR);
        store.setToDefault(WorkbenchPreferences.DECIMAL_COMMA);
        runWaiting();
        assertEquals(DisplaySettings.USUAL, desk.display());
    }

    @Test
    void aFactorThatCannotBeChosenCountsAsTheUsualOne() {
        store.setValue(WorkbenchPreferences.COVERAGE_FACTOR, "17");
        store.setValue(WorkbenchPreferences.DECIMAL_COMMA, "true");
        DeskServices.followPreferences(desk, store);
        assertEquals(new DisplaySettings(2, true), desk.display());
    }

    @Test
    void theLanguageDecidesUnlessASignWasChosen() {
        String before = System.getProperty(Language.PROPERTY);
        store.setDefault(WorkbenchPreferences.DECIMAL_COMMA, WorkbenchPreferences.AS_LANGUAGE);
        try {
            System.setProperty(Language.PROPERTY, "de");
            DeskServices.followPreferences(desk, store);
            assertEquals(new DisplaySettings(2, true), desk.display());
            store.setValue(WorkbenchPreferences.DECIMAL_COMMA, "false");
            runWaiting();
            assertEquals(DisplaySettings.USUAL, desk.display());
            store.setToDefault(WorkbenchPreferences.DECIMAL_COMMA);
            runWaiting();
            assertEquals(new DisplaySettings(2, true), desk.display());
            System.setProperty(Language.PROPERTY, "en");
            DeskServices.followPreferences(desk, store);
            assertEquals(DisplaySettings.USUAL, desk.display());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
