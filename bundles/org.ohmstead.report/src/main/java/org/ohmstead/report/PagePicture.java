// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

/**
 * A page as pixels.
 *
 * @param widthPixels width, above 0
 * @param heightPixels height, above 0
 * @param rgb one number 0xRRGGBB for each pixel, row by row from the top left; belongs to whoever asked for the picture
 */
public record PagePicture(int widthPixels, int heightPixels, int[] rgb) {
    /** Checks that there are as many pixels as the size says. */
    public PagePicture {
        if (widthPixels <= 0 || heightPixels <= 0 || rgb.length != widthPixels * heightPixels) {
            throw new IllegalArgumentException("rgb has " + rgb.length + " pixels; a picture of " + widthPixels + " x "
                    + heightPixels + " must have the product of its sides, each above 0");
        }
    }
}
