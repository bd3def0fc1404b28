// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

/**
 * The size of a page on paper.
 *
 * @param widthPoints width in points of 1/72 inch, above 0
 * @param heightPoints height in points of 1/72 inch, above 0
 */
public record PageSize(double widthPoints, double heightPoints) {
    /** Checks the ranges given above. */
    public PageSize {
        if (!(widthPoints > 0) || !(heightPoints > 0) || Double.isInfinite(widthPoints + heightPoints)) {
            throw new IllegalArgumentException("the size is " + widthPoints + " x " + heightPoints
                    + " points; both must be finite numbers above 0");
        }
    }
}
