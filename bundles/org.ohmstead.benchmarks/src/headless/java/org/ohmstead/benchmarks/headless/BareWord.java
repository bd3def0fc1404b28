// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks.headless;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;

/** The least that an application of the platform can do without a window: it says one line and ends. */
public final class BareWord implements IApplication {
    /** Makes the application. */
    public BareWord() {}

    @Override
    public Object start(IApplicationContext context) throws IOException {
        try (OutputStream out = new FileOutputStream(FileDescriptor.out)) {
            out.write("bare\n".getBytes(StandardCharsets.UTF_8));
        }
        return EXIT_OK;
    }

    @Override
    public void stop() {
        // It has ended before anybody can ask.
    }
}
