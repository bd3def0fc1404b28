// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.util.Objects;

/**
 * The state of the test log that a sheet was made from.
 *
 * @param headHash hash of the log's last entry, hexadecimal; "" when the log is empty
 * @param entryCount number of entries, at least 0
 * @param verified whether the whole chain of hashes was checked and found intact
 */
public record LogStamp(String headHash, long entryCount, boolean verified) {
    /** Checks the ranges given above. */
    public LogStamp {
        Objects.requireNonNull(headHash, "headHash");
        if (entryCount < 0) {
            throw new IllegalArgumentException("entryCount is " + entryCount + "; it must be at least 0");
        }
    }
}
