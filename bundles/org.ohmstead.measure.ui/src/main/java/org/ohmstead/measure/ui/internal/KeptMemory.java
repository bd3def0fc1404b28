// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.InstanceScope;

/** Keeps with the settings of the workbench; the operator's name is shared with the log, which asks for it too. */
final class KeptMemory implements ConsoleMemory {
    private static final String OPERATOR = "operator";

    private final IEclipsePreferences settings = InstanceScope.INSTANCE.getNode("org.ohmstead.measure.ui");
    private final IEclipsePreferences ofTheLog = InstanceScope.INSTANCE.getNode("org.ohmstead.testlog.ui");

    @Override
    public String get(String key) {
        String kept = settings.get(key, "");
        return kept.isEmpty() && key.equals(OPERATOR) ? ofTheLog.get(OPERATOR, "") : kept;
    }

    @Override
    public void put(String key, String value) {
        if (value.isEmpty()) {
            settings.remove(key);
        } else {
            settings.put(key, value);
        }
        if (key.equals(OPERATOR) && !value.isEmpty()) {
            ofTheLog.put(OPERATOR, value);
        }
    }
}
