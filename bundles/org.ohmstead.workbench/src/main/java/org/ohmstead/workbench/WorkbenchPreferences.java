// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench;

import java.nio.file.Path;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.preference.IPreferenceStore;
import org.eclipse.ui.preferences.ScopedPreferenceStore;

/** The user's preferences: keys, defaults and values. */
public final class WorkbenchPreferences {
    /** Whether the project that was open last is opened at the start; true or false. */
    public static final String REOPEN_LAST = "reopenLast";
    /** Factor by which standard uncertainties are widened where they are shown: 1, 2 or 3. */
    public static final String COVERAGE_FACTOR = "coverageFactor";
    /** Whether numbers are shown with a decimal comma instead of a point: true, false or {@link #AS_LANGUAGE}. */
    public static final String DECIMAL_COMMA = "decimalComma";
    /** The value of {@link #DECIMAL_COMMA} that leaves it to the language. */
    public static final String AS_LANGUAGE = "language";
    /** Confidence in percent that new projects ask of a verdict, which sets the guard band: above 50, below 100. */
    public static final String CONFIDENCE_PERCENT = "confidencePercent";
    /** Folder in which new projects are offered a place. */
    public static final String PROJECTS_FOLDER = "projectsFolder";
    /** Folder where recordings are looked for first; empty for beside the project. */
    public static final String RECORDINGS_FOLDER = "recordingsFolder";

    private static final String NODE = "org.ohmstead.workbench";
    private static final int USUAL_COVERAGE_FACTOR = 2;
    private static final int USUAL_CONFIDENCE_PERCENT = 95;

    private static final IPreferenceStore STORE = withDefaults(new ScopedPreferenceStore(InstanceScope.INSTANCE, NODE));

    private WorkbenchPreferences() {}

    private static IPreferenceStore withDefaults(IPreferenceStore store) {
        store.setDefault(REOPEN_LAST, true);
        store.setDefault(COVERAGE_FACTOR, USUAL_COVERAGE_FACTOR);
        store.setDefault(DECIMAL_COMMA, AS_LANGUAGE);
        store.setDefault(CONFIDENCE_PERCENT, USUAL_CONFIDENCE_PERCENT);
        store.setDefault(
                PROJECTS_FOLDER,
                Path.of(System.getProperty("user.home"), "Ohmstead projects").toString());
        store.setDefault(RECORDINGS_FOLDER, "");
        return store;
    }

    /** Returns the store with all of them; their defaults are set. */
    public static IPreferenceStore store() {
        return STORE;
    }
}
