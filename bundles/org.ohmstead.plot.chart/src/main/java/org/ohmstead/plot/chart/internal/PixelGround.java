// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.Arrays;

/**
 * The pixels of an image that is drawn on, for what is drawn faster into them than through graphics.
 *
 * @param pixels each as 0xRRGGBB, row by row; the image's own
 * @param width pixels in a row
 * @param height rows
 * @param blank the colour that they had before anything was drawn
 */
record PixelGround(int[] pixels, int width, int height, int blank) {
    /** Paints an image of type {@link BufferedImage#TYPE_INT_RGB} that is no part of another, and returns its ground. */
    static PixelGround of(BufferedImage image, int blank) {
        if (image.getType() != BufferedImage.TYPE_INT_RGB
                || image.getRaster().getParent() != null
                || !(image.getRaster().getDataBuffer() instanceof DataBufferInt buffer)) {
            throw new IllegalArgumentException("image must be a whole one of TYPE_INT_RGB but is " + image + ".");
        }
        Arrays.fill(buffer.getData(), blank);
        return new PixelGround(buffer.getData(), image.getWidth(), image.getHeight(), blank);
    }
}
