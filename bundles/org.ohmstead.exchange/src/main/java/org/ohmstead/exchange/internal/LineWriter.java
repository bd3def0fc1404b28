// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.ohmstead.exchange.LogLines.Head;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.units.text.Messages;

/** Writes the rows of a log as lines. */
public final class LineWriter {
    private static final Messages TEXTS = Messages.of(LineWriter.class);
    private static final int PAGE = 256;

    private LineWriter() {}

    /** Writes all chains as they are at the beginning. */
    public static void write(RowSource source, Head head, OutputStream out) throws IOException, TestLogException {
        List<ChainInfo> chains = source.chains();
        out.write(LineJson.head(head.title(), head.softwareVersion(), head.writtenAt(), chains));
        out.write('\n');
        for (ChainInfo chain : chains) {
            long after = chain.firstSequence() - 1;
            while (after < chain.lastSequence()) {
                List<ChainedRow> rows =
                        source.rows(chain.chain(), after, (int) Math.min(PAGE, chain.lastSequence() - after));
                if (rows.isEmpty()) {
                    throw new TestLogException(TEXTS.text("lines.logEnds", after, chain.lastSequence()));
                }
                for (ChainedRow row : rows) {
                    out.write(LineJson.line(chain.chain(), row));
                    out.write('\n');
                }
                after = rows.get(rows.size() - 1).sequence();
            }
        }
    }
}
