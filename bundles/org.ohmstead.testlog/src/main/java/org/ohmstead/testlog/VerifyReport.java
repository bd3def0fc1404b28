// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.List;
import java.util.Objects;

/**
 * What a check of the whole log found.
 *
 * @param entriesChecked number of entries that were read
 * @param headHash hash stored in the last of them, 64 hexadecimal digits; zeros when there is none
 * @param faults what is wrong; empty when nothing is
 * @param clockStepCount at how many places time runs backwards, which is no fault
 * @param clockSteps the first hundred of these places, or 99 and the last; those of the log's own chain before those of joined ones
 */
public record VerifyReport(
        long entriesChecked,
        String headHash,
        List<VerifyFault> faults,
        long clockStepCount,
        List<ClockStep> clockSteps) {
    /** So many places where time runs backwards are told of one by one. */
    public static final int MOST_CLOCK_STEPS = 100;

    public VerifyReport {
        Objects.requireNonNull(headHash, "headHash");
        faults = List.copyOf(faults);
        clockSteps = List.copyOf(clockSteps);
    }

    /** Makes a report that tells nothing of the clock. */
    public VerifyReport(long entriesChecked, String headHash, List<VerifyFault> faults) {
        this(entriesChecked, headHash, faults, 0, List.of());
    }

    /** Returns whether no fault was found. */
    public boolean intact() {
        return faults.isEmpty();
    }
}
