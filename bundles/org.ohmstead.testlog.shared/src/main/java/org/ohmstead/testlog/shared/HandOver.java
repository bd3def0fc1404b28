// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.RowSource;

/**
 * Hands over to the shared log what it does not have yet of a bench's log. Entries go over as they are, with their hashes, so that it can
 * be repeated at will: an entry that is there is recognised by its hash. Each batch is one transaction; what the server has confirmed
 * stays, whatever happens afterwards.
 *
 * <p>When a copy of a project went its own way, its entries from the parting on become a chain of their own; those before it are not
 * repeated. Chains that were joined to the bench's log are handed over too, each as a chain of its own.
 */
public final class HandOver {
    private final SharedLab lab;
    private final ChainOrigin origin;

    /** Told of every batch as soon as the server has confirmed it. */
    @FunctionalInterface
    public interface Confirmation {
        /**
         * The entries of a chain up to one of them are kept.
         *
         * @param chain hash of the chain's first entry in the bench's log
         * @param sequence number of the last that is kept
         */
        void kept(String chain, long sequence);
    }

    /**
     * Prepares hand-overs.
     *
     * @param lab where to
     * @param origin said of chains that are begun
     */
    public HandOver(SharedLab lab, ChainOrigin origin) {
        this.lab = Objects.requireNonNull(lab, "lab");
        this.origin = Objects.requireNonNull(origin, "origin");
    }

    /** Hands over everything that is new. */
    public HandOverReport run(RowSource log) throws SharedLabException, TestLogException {
        return run(log, (chain, sequence) -> {});
    }

    /**
     * Hands over everything that is new.
     *
     * @param log the bench's log
     * @param confirmation told of each batch; also, first, of what is there already
     * @throws SharedLabException when it fails on the way; what was confirmed is kept, and the rest can be handed over later
     * @throws TestLogException when the bench's log cannot be read
     */
    public HandOverReport run(RowSource log, Confirmation confirmation) throws SharedLabException, TestLogException {
        List<HandOverReport.Part> parts = new ArrayList<>();
        for (ChainInfo info : inOrder(log)) {
            ChainOrigin whose =
                    info.label().isEmpty() || info.name().isBlank() ? origin : origin.withBench(info.name());
            parts.add(new ChainHandOver(lab, log, info, whose, confirmation).run());
        }
        return new HandOverReport(parts);
    }

    /**
     * Returns how many entries of the bench's log the shared log does not have yet. Nothing is handed over.
     *
     * @param log the bench's log
     */
    public long waiting(RowSource log) throws SharedLabException, TestLogException {
        long waiting = 0;
        for (ChainInfo info : inOrder(log)) {
            waiting += info.lastSequence() - new ChainSearch(lab, log, info).lastThere();
        }
        return waiting;
    }

    /** A chain that parts from another can only follow it. */
    private static List<ChainInfo> inOrder(RowSource log) throws TestLogException {
        List<ChainInfo> chains = new ArrayList<>();
        log.chains().stream()
                .filter(info -> info.entries() > 0 && info.firstSequence() == 1)
                .forEach(chains::add);
        log.chains().stream()
                .filter(info -> info.entries() > 0 && info.firstSequence() > 1)
                .forEach(chains::add);
        return chains;
    }
}
