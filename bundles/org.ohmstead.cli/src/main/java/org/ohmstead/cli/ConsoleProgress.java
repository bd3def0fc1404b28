// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.jobs.JobProgress;

/** Shows on the console how far a job has come. */
final class ConsoleProgress implements JobProgress {
    private final Console console;

    ConsoleProgress(Console console) {
        this.console = console;
    }

    @Override
    public void step(int done, int total, String what) {
        if (done < total) {
            console.progress(done + 1, total, what);
        }
    }

    @Override
    public boolean cancelled() {
        return false;
    }

    @Override
    public void remark(String sentence) {
        console.message(sentence);
    }
}
