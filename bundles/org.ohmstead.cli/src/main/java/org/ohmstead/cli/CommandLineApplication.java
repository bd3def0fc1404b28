// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;

/** The command line as an application of the framework. Its exit code is that of {@link Ohmstead#run}. */
public final class CommandLineApplication implements IApplication {
    @Override
    public Object start(IApplicationContext context) {
        String[] arguments = (String[]) context.getArguments().get(IApplicationContext.APPLICATION_ARGS);
        return Ohmstead.run(arguments == null ? new String[0] : arguments, System.out, System.err);
    }

    @Override
    public void stop() {
        // Every word returns by itself; there is nothing to wind down.
    }
}
