// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.units.text.Messages;

/**
 * Finds how far the shared log has a chain of a bench. Since every hash stands for all that comes before it, the entry after the last one
 * that is there is not there, nor is any behind it; so each question with some hashes narrows it down to the gap between two of them.
 */
final class ChainSearch {
    private static final Messages TEXTS = Messages.of(ChainSearch.class);
    private static final int PROBES = 32;

    private final SharedLab lab;
    private final RowSource log;
    private final ChainInfo info;

    ChainSearch(SharedLab lab, RowSource log, ChainInfo info) {
        this.lab = lab;
        this.log = log;
        this.info = info;
    }

    /** Returns the number of the last entry that is there; one less than the chain's first number when none is. */
    long lastThere() throws SharedLabException, TestLogException {
        long there = info.firstSequence() - 1;
        long missing = lastSequence() + 1;
        while (missing - there > 1) {
            TreeMap<Long, String> hashes = new TreeMap<>();
            for (long sequence : probes(there, missing)) {
                hashes.put(sequence, row(sequence).hash());
            }
            Set<String> known =
                    lab.work(TEXTS.text("failed.search"), table -> table.there(List.copyOf(hashes.values())));
            for (var probe : hashes.entrySet()) {
                if (!known.contains(probe.getValue())) {
                    missing = probe.getKey();
                    break;
                }
                there = probe.getKey();
            }
        }
        return there;
    }

    /** Returns the number of the last entry that there is by now: more may have been added, and handed over, meanwhile. */
    private long lastSequence() throws TestLogException {
        return log.chains().stream()
                .filter(chain -> chain.chain().equals(info.chain()))
                .findFirst()
                .orElse(info)
                .lastSequence();
    }

    /** Returns some numbers between two, the last before the second among them: usually little or nothing is missing. */
    private static List<Long> probes(long there, long missing) {
        long gap = missing - there - 1;
        long count = Math.min(PROBES, gap);
        List<Long> probes = new ArrayList<>();
        for (long probe = 1; probe <= count; probe++) {
            probes.add(there + gap * probe / count);
        }
        return probes;
    }

    /** Returns an entry of the bench's log. */
    ChainedRow row(long sequence) throws SharedLabException, TestLogException {
        List<ChainedRow> rows = log.rows(info.chain(), sequence - 1, 1);
        if (rows.isEmpty() || rows.get(0).sequence() != sequence) {
            throw damaged(TEXTS.text("damaged.missing", sequence));
        }
        return rows.get(0);
    }

    /** Returns the failure that a bench's log which is not whole means. */
    SharedLabException damaged(String predicate) {
        return new SharedLabException(
                SharedLabException.Reason.LOCAL_LOG,
                TEXTS.text(info.label().isEmpty() ? "damaged.own" : "damaged.joined", predicate, info.label()));
    }
}
