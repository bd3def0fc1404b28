// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.chain;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.testlog.ClockStep;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.internal.ChainWalk;
import org.ohmstead.testlog.internal.RawRow;
import org.ohmstead.testlog.internal.RowHash;

/**
 * Checks the rows of a chain one after the other: that each has its place, continues the one before, gives its hash and can be read, and
 * that voids take back what is there. It reads every content, so it may be trusted with rows from anywhere.
 */
public final class ChainCheck {
    private final RowHash hash = new RowHash();
    private final List<VerifyFault> faults = new ArrayList<>();
    private final ChainWalk walk;

    /** Begins a check of a chain from its first entry. */
    public ChainCheck() {
        this("");
    }

    /**
     * Begins a check of a chain from its first entry.
     *
     * @param label of the chain, which faults name its entries with; empty for a log's own
     */
    public ChainCheck(String label) {
        walk = new ChainWalk(label, true, faults::add);
    }

    private ChainCheck(ChainCheck start, String label) {
        walk = start.walk.parting(label, true, faults::add);
    }

    /** Returns a check of a chain that parts from this one behind the last row that was checked. */
    public ChainCheck parting(String label) {
        return new ChainCheck(this, label);
    }

    /** Checks the next row. */
    public void check(ChainedRow row) {
        RawRow raw = RawRow.of(row);
        walk.accept(raw, hash.fits(raw));
    }

    /** Returns what is wrong with the rows so far, in their order; empty when nothing is. */
    public List<VerifyFault> faults() {
        return List.copyOf(faults);
    }

    /** Returns at how many places of the rows so far time runs backwards, which is no fault. */
    public long clockStepCount() {
        return walk.clock().count();
    }

    /** Returns the first hundred of these places, or 99 and the last. */
    public List<ClockStep> clockSteps() {
        return walk.clock().told();
    }

    /** Returns how many rows were checked. */
    public long checked() {
        return walk.checked();
    }

    /** Returns the number of the last row, 0 when there is none. */
    public long lastSequence() {
        return walk.lastSequence();
    }

    /** Returns the hash of the last row, zeros when there is none. */
    public String headHash() {
        return walk.lastHash();
    }
}
