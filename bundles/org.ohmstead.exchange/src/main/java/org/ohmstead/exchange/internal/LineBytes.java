// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.units.text.Messages;

/** Lines of a file as bytes, with the place where each begins, none longer than is allowed. */
final class LineBytes {
    private static final Messages TEXTS = Messages.of(LineBytes.class);
    private final InputStream in;
    private final int longest;
    private final ByteArrayOutputStream line = new ByteArrayOutputStream();
    private final byte[] buffer = new byte[1 << 15];
    private int at;
    private int filled;
    private long place;
    private long begin;

    LineBytes(InputStream in, int longest) {
        this.in = in;
        this.longest = longest;
    }

    /** Returns the next line without its end, or empty at the end of the file. */
    Optional<byte[]> next() throws IOException, ExchangeException {
        line.reset();
        begin = place;
        boolean any = false;
        while (true) {
            if (at == filled) {
                filled = Math.max(0, in.read(buffer));
                at = 0;
                if (filled == 0) {
                    return any ? Optional.of(line.toByteArray()) : Optional.empty();
                }
            }
            any = true;
            int end = at;
            while (end < filled && buffer[end] != '\n') {
                end++;
            }
            line.write(buffer, at, end - at);
            place += end - at;
            at = end;
            if (line.size() > longest) {
                throw ExchangeException.refused(TEXTS.text("lines.longLine", longest));
            }
            if (at < filled) {
                at++;
                place++;
                return Optional.of(line.toByteArray());
            }
        }
    }

    /** Returns where in the file the last line began. */
    long begin() {
        return begin;
    }
}
