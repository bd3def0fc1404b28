// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.ByteBuffer;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;

/** Brings a picture drawn by AWT to SWT. */
public final class Pixels {
    private static final int DEPTH = 32;

    private Pixels() {}

    /** Returns a blank picture that {@link #toImageData} takes. */
    public static BufferedImage blank(int width, int height) {
        return new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    }

    /** Returns the same picture for SWT; all pixels in one go, as both keep red, green and blue in the same order. */
    public static ImageData toImageData(BufferedImage image) {
        int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        PaletteData direct = new PaletteData(0xFF0000, 0xFF00, 0xFF);
        ImageData data = new ImageData(image.getWidth(), image.getHeight(), DEPTH, direct);
        ByteBuffer.wrap(data.data).asIntBuffer().put(pixels);
        return data;
    }
}
