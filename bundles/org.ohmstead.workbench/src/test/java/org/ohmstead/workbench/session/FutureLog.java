// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.LogRebuild;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;

/** A log whose only entry was added while the computer's clock was far ahead. */
final class FutureLog {
    static final String TIME = "2100-01-01T00:00:00Z";

    private FutureLog() {}

    static void write(Path logFile) throws TestLogException {
        ChainedRow row = ChainedRow.chained(
                1, "note", "N0001", TIME, "{\"text\":\"a note\",\"who\":\"\"}", ChainedRow.FIRST_PREVIOUS_HASH);
        LogRebuild.write(
                new RowSource() {
                    @Override
                    public List<ChainInfo> chains() {
                        return List.of(new ChainInfo(row.hash(), "", "", 1, row.hash()));
                    }

                    @Override
                    public List<ChainedRow> rows(String chain, long after, int most) {
                        return after == 0 ? List.of(row) : List.of();
                    }
                },
                logFile);
    }
}
