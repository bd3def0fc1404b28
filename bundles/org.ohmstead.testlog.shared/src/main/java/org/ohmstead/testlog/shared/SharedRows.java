// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.io.IOException;
import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;

/**
 * All chains of the shared log as a source of rows, for a search index, for histories and for checks. None of them is the source's own:
 * each has a label, which stays the same for ever. A chain that parts from another one holds only what comes after the parting.
 *
 * <p>Uses the connection of the {@link SharedLab} that it was got from.
 */
public final class SharedRows implements RowSource {
    private final SharedLab lab;

    SharedRows(SharedLab lab) {
        this.lab = lab;
    }

    @Override
    public List<ChainInfo> chains() throws TestLogException {
        try {
            return lab.chains().stream()
                    .map(LabChain::info)
                    .filter(info -> info.entries() > 0)
                    .toList();
        } catch (SharedLabException failure) {
            throw failure(failure);
        }
    }

    @Override
    public List<ChainedRow> rows(String chain, long after, int most) throws TestLogException {
        try {
            return lab.rows(chain, after, most);
        } catch (SharedLabException failure) {
            throw failure(failure);
        }
    }

    private static TestLogException failure(SharedLabException failure) {
        // A cause from outside is told by its kind.
        return failure.reason().passing()
                ? new TestLogException(failure.getMessage(), new IOException(failure))
                : new TestLogException(failure.getMessage(), failure);
    }
}
