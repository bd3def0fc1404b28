// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;

/** The rows of a log's file: of its own chain and of those that were joined. */
public final class LogRows implements RowSource {
    private final Object lock;
    private final Path file;
    private final EntryTable table;
    private final JoinedTable joined;

    /** Reads while holding a lock. */
    public LogRows(Object lock, Path file, EntryTable table, JoinedTable joined) {
        this.lock = lock;
        this.file = file;
        this.table = table;
        this.joined = joined;
    }

    @Override
    public List<ChainInfo> chains() throws TestLogException {
        synchronized (lock) {
            return LogFailures.guard(file, LogFailures.READ, () -> {
                List<ChainInfo> chains = new ArrayList<>();
                chains.add(new ChainInfo(table.firstHash(), "", "", table.lastSequence(), table.headHash()));
                joined.chains().forEach(chain -> chains.add(chain.info()));
                return chains;
            });
        }
    }

    @Override
    public List<ChainedRow> rows(String chain, long after, int most) throws TestLogException {
        synchronized (lock) {
            return LogFailures.guard(file, LogFailures.READ, () -> {
                if (chain.equals(table.firstHash())) {
                    return table.between(after, Long.MAX_VALUE, most);
                }
                Optional<JoinedTable.Chain> other = joined.chains().stream()
                        .filter(each -> each.info().chain().equals(chain))
                        .findFirst();
                return other.isPresent()
                        ? joined.between(other.get().number(), after, Long.MAX_VALUE, most)
                        : List.of();
            });
        }
    }
}
