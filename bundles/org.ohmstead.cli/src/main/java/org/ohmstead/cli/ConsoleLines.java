// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Passes text that is written as bytes in UTF-8 on to the console, line by line. */
final class ConsoleLines extends OutputStream {
    private final Console console;
    private final ByteArrayOutputStream line = new ByteArrayOutputStream();

    ConsoleLines(Console console) {
        this.console = console;
    }

    @Override
    public void write(int value) {
        line.write(value);
        if (value == '\n') {
            flush();
        }
    }

    @Override
    public void flush() {
        if (line.size() > 0 && line.toByteArray()[line.size() - 1] == '\n') {
            console.raw(line.toString(StandardCharsets.UTF_8));
            line.reset();
        }
    }

    @Override
    public void close() {
        console.raw(line.toString(StandardCharsets.UTF_8));
        line.reset();
    }
}
