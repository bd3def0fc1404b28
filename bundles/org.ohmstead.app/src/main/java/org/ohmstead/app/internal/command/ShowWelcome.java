// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.command;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.ui.handlers.HandlerUtil;
import org.ohmstead.app.internal.WelcomeOpening;

/** Shows the welcome page. */
public final class ShowWelcome extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        WelcomeOpening.open(HandlerUtil.getActiveWorkbenchWindowChecked(event));
        return null;
    }
}
