// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

/**
 * How much of a table from elsewhere is read at most, so that a file made to do harm fills neither memory nor time.
 *
 * @param fileBytes size of the file in bytes
 * @param inflatedBytes bytes that a workbook may unfold to in all
 * @param inflationRatio unfolded over packed bytes of a workbook, looked at above 4 MiB
 * @param rows rows with content
 * @param columns cells of a row
 * @param cellCharacters characters of a cell
 * @param sharedCharacters characters of all texts that a workbook keeps apart from its sheets
 */
public record TableLimits(
        long fileBytes,
        long inflatedBytes,
        double inflationRatio,
        int rows,
        int columns,
        int cellCharacters,
        int sharedCharacters) {
    /** What is usual: tables of up to 200,000 rows. */
    public static final TableLimits USUAL = new TableLimits(256L << 20, 1L << 30, 200, 200_000, 400, 32_767, 64 << 20);

    /** Checks that all are above 0. */
    public TableLimits {
        boolean positive = fileBytes > 0
                && inflatedBytes > 0
                && inflationRatio > 0
                && rows > 0
                && columns > 0
                && cellCharacters > 0
                && sharedCharacters > 0;
        if (!positive) {
            throw new IllegalArgumentException("the limits hold a value that is not above 0");
        }
    }
}
