// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLogger;
import java.util.logging.Level;

/** Takes what the page layout has to say into the platform's log: warnings and worse, the rest only where debugging is on. */
final class PageLog implements XRLogger {
    private static final System.Logger LOG = System.getLogger(PageLog.class.getName());

    @Override
    public void log(String where, Level level, String message) {
        LOG.log(levelOf(level), message);
    }

    @Override
    public void log(String where, Level level, String message, Throwable cause) {
        LOG.log(levelOf(level), message, cause);
    }

    @Override
    public void setLevel(String where, Level level) {
        LOG.log(System.Logger.Level.TRACE, "The platform's log sets the levels; {0} stays as it is.", where);
    }

    @Override
    public boolean isLogLevelEnabled(Diagnostic diagnostic) {
        return LOG.isLoggable(levelOf(diagnostic.getLevel()));
    }

    private static System.Logger.Level levelOf(Level level) {
        if (level.intValue() >= Level.SEVERE.intValue()) {
            return System.Logger.Level.ERROR;
        }
        return level.intValue() >= Level.WARNING.intValue() ? System.Logger.Level.WARNING : System.Logger.Level.DEBUG;
    }
}
