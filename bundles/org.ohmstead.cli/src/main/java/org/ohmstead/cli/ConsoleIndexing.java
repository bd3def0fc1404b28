// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.testlog.search.IndexProgress;

/** Shows on the console how far the making of a search index is. */
final class ConsoleIndexing implements IndexProgress {
    private final Console console;

    ConsoleIndexing(Console console) {
        this.console = console;
    }

    @Override
    public void indexed(long done, long total) {
        console.progress(
                (int) Math.min(Integer.MAX_VALUE, done),
                (int) Math.min(Integer.MAX_VALUE, total),
                Texts.of("indexing.progress"));
    }

    @Override
    public boolean cancelled() {
        return false;
    }
}
