// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

/**
 * How much of a packed project is taken in at most, so that a file made to do harm fills neither memory nor disk.
 *
 * @param files files in it
 * @param fileBytes bytes of one of them
 * @param totalBytes bytes of all of them
 * @param inflationRatio unfolded over packed bytes, looked at above {@code freeBytes}
 * @param freeBytes unfolded bytes up to which the ratio does not matter
 */
public record PackLimits(int files, long fileBytes, long totalBytes, double inflationRatio, long freeBytes) {
    /** What is usual: up to 200,000 files and 64 GiB. */
    public static final PackLimits USUAL = new PackLimits(200_000, 8L << 30, 64L << 30, 200, 64L << 20);

    /** Checks that all are above 0. */
    public PackLimits {
        if (files <= 0 || fileBytes <= 0 || totalBytes <= 0 || !(inflationRatio > 0) || freeBytes <= 0) {
            throw new IllegalArgumentException("the limits hold a value that is not above 0");
        }
    }
}
