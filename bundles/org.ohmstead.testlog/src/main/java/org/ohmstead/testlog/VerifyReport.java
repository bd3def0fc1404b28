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
 */
public record VerifyReport(long entriesChecked, String headHash, List<VerifyFault> faults) {
    public VerifyReport {
        Objects.requireNonNull(headHash, "headHash");
        faults = List.copyOf(faults);
    }

    /** Returns whether no fault was found. */
    public boolean intact() {
        return faults.isEmpty();
    }
}
