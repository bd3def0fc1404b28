// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.exchange.ExchangeProgress;

/** Shows on the console how far it is with what goes in or out. */
final class ConsoleExchange implements ExchangeProgress {
    private final Console console;

    ConsoleExchange(Console console) {
        this.console = console;
    }

    @Override
    public void step(long done, long total, String what) {
        if (done < total) {
            console.progress(
                    (int) Math.min(Integer.MAX_VALUE, done + 1), (int) Math.min(Integer.MAX_VALUE, total), what);
        }
    }

    @Override
    public boolean cancelled() {
        return false;
    }
}
