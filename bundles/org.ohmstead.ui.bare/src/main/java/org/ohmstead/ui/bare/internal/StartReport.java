// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.bare.internal;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.core.runtime.ILog;

/**
 * Tells who measures it how long the start took: the milliseconds from the start of Java to the first moment
 * at which the open window has nothing left to do, as a number in the file that the system property
 * {@code ohmstead.start.report} names.
 */
final class StartReport {
    private static final String FILE = "ohmstead.start.report";

    private StartReport() {}

    /** Writes the report and returns true; does nothing and returns false when the property is not set. */
    static boolean write() {
        long now = System.currentTimeMillis();
        String file = System.getProperty(FILE, "");
        if (file.isBlank()) {
            return false;
        }
        long millis = now - ManagementFactory.getRuntimeMXBean().getStartTime();
        try {
            Files.writeString(Path.of(file), millis + "\n");
        } catch (IOException e) {
            ILog.of(StartReport.class).error("The start could not be reported to " + file + ".", e);
        }
        return true;
    }
}
