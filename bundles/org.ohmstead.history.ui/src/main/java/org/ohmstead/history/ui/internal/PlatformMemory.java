// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.InstanceScope;

/** Keeps with the settings of the workbench; the operator's name is that of the log, which asks for it too. */
final class PlatformMemory implements ViewMemory {
    private final IEclipsePreferences settings = InstanceScope.INSTANCE.getNode("org.ohmstead.history.ui");
    private final IEclipsePreferences ofTheLog = InstanceScope.INSTANCE.getNode("org.ohmstead.testlog.ui");

    @Override
    public String get(String key) {
        return node(key).get(key, "");
    }

    @Override
    public void put(String key, String value) {
        if (value.isEmpty()) {
            node(key).remove(key);
        } else {
            node(key).put(key, value);
        }
    }

    private IEclipsePreferences node(String key) {
        return key.equals(OPERATOR) ? ofTheLog : settings;
    }
}
