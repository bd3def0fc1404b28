// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.work;

import org.eclipse.core.runtime.IProgressMonitor;
import org.ohmstead.workbench.session.WorkProgress;

/** Shows the progress of work on a platform monitor. */
final class MonitorProgress implements WorkProgress {
    private final IProgressMonitor monitor;
    private final String title;
    private int total;
    private int shown;

    MonitorProgress(String title, IProgressMonitor monitor) {
        this.title = title;
        this.monitor = monitor;
    }

    @Override
    public synchronized void step(int done, int newTotal, String what) {
        if (total == 0) {
            total = newTotal;
            monitor.beginTask(title, newTotal);
        }
        monitor.subTask(what);
        monitor.worked(Math.max(0, done - shown));
        shown = Math.max(shown, done);
    }

    @Override
    public boolean cancelled() {
        return monitor.isCanceled();
    }

    synchronized void end() {
        monitor.done();
    }
}
