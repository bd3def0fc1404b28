// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.chain;

import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;

/**
 * Where the rows of chains come from: a log's file, or a database that several benches share. Rows are only ever added. A chain with an
 * empty label is the source's own: the rows of the others belong where its join entries say.
 */
public interface RowSource {
    /** Returns the chains that there are, each once; the source's own, when it has one, first. */
    List<ChainInfo> chains() throws TestLogException;

    /**
     * Returns some of the rows of a chain, in their order.
     *
     * @param chain hash of the chain's first entry
     * @param after number of the entry that they come after; 0 for the chain's beginning
     * @param most how many at most, at least 1
     * @return none when there are no more, or no such chain
     */
    List<ChainedRow> rows(String chain, long after, int most) throws TestLogException;
}
