// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.PlatformUI;

/** Presses the emergency stop from wherever the user is. */
public final class PressEmergencyStop extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        RunServices.of(PlatformUI.getWorkbench()).ifPresent(RunDesk::emergencyStop);
        return null;
    }
}
