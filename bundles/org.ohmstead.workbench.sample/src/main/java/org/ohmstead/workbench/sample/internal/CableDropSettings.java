// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.preference.IPreferenceStore;
import org.eclipse.ui.preferences.ScopedPreferenceStore;

/** The module's one preference. */
final class CableDropSettings {
    /** Key of the drop from which a problem is shown, in millivolts. */
    static final String ALLOWED_MILLIVOLTS = "allowedMillivolts";

    /** Common practice, no source: half a volt between supply and amplifier. */
    static final int USUAL_MILLIVOLTS = 500;

    private static final double MILLIVOLTS_PER_VOLT = 1000;

    private CableDropSettings() {}

    static IPreferenceStore store() {
        IPreferenceStore store = new ScopedPreferenceStore(InstanceScope.INSTANCE, "org.ohmstead.workbench.sample");
        store.setDefault(ALLOWED_MILLIVOLTS, USUAL_MILLIVOLTS);
        return store;
    }

    static double allowedVolts() {
        return store().getInt(ALLOWED_MILLIVOLTS) / MILLIVOLTS_PER_VOLT;
    }
}
