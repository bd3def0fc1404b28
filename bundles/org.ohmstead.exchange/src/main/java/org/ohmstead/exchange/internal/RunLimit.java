// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.ohmstead.units.text.Messages;

/** Stops when XML goes on for long without a new tag, because a parser holds a text or an attribute whole in memory. */
final class RunLimit extends FilterInputStream {
    private static final Messages TEXTS = Messages.of(RunLimit.class);
    private final int longest;
    private int run;

    RunLimit(InputStream in, int longest) {
        super(in);
        this.longest = longest;
    }

    @Override
    public int read() throws IOException {
        int value = super.read();
        if (value >= 0) {
            look((byte) value);
        }
        return value;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int read = super.read(buffer, offset, length);
        for (int index = offset; index < offset + read; index++) {
            look(buffer[index]);
        }
        return read;
    }

    private void look(byte value) throws IOException {
        run = value == '<' ? 0 : run + 1;
        if (run > longest) {
            throw new InflationGuard.TooMuch(TEXTS.text("workbook.longRun", longest));
        }
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
