// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.units.text.Messages;

/** Counts what comes out of an archive, whatever its headers say, and stops when it is too much. */
final class InflationGuard {
    private static final Messages TEXTS = Messages.of(InflationGuard.class);
    /** What must not be passed on as if it were a fault of the disk. */
    static final class TooMuch extends IOException {
        private static final long serialVersionUID = 1L;

        TooMuch(String sentence) {
            super(sentence);
        }

        ExchangeException refusal() {
            return ExchangeException.refused(getMessage(), this);
        }
    }

    private final String archive;
    private final long packedBytes;
    private final long mostBytes;
    private final double mostRatio;
    private final long freeBytes;
    private long bytes;

    /**
     * Guards an archive.
     *
     * @param archive its name in messages
     * @param packedBytes its size
     * @param mostBytes what it may unfold to in all
     * @param mostRatio unfolded over packed bytes
     * @param freeBytes up to where the ratio does not matter
     */
    InflationGuard(String archive, long packedBytes, long mostBytes, double mostRatio, long freeBytes) {
        this.archive = archive;
        this.packedBytes = packedBytes;
        this.mostBytes = mostBytes;
        this.mostRatio = mostRatio;
        this.freeBytes = freeBytes;
    }

    /** Counts bytes that came out. */
    void count(long more) throws TooMuch {
        bytes += more;
        if (bytes > mostBytes) {
            throw new TooMuch(TEXTS.text("unfold.bytes", archive, mostBytes));
        }
        if (bytes > freeBytes && bytes > mostRatio * packedBytes) {
            throw new TooMuch(TEXTS.text("unfold.ratio", archive, (long) mostRatio));
        }
    }

    /** Returns a stream that is counted. */
    InputStream guarded(InputStream in) {
        return new FilterInputStream(in) {
            @Override
            public int read() throws IOException {
                int value = super.read();
                if (value >= 0) {
                    count(1);
                }
                return value;
            }

            @Override
            public int read(byte[] buffer, int offset, int length) throws IOException {
                int read = super.read(buffer, offset, length);
                if (read > 0) {
                    count(read);
                }
                return read;
            }

            @Override
            public long skip(long count) throws IOException {
                byte[] passed = new byte[(int) Math.min(8192, Math.max(1, count))];
                return Math.max(0, read(passed, 0, (int) Math.min(passed.length, count)));
            }

            @Override
            public boolean markSupported() {
                return false;
            }
        };
    }
}
