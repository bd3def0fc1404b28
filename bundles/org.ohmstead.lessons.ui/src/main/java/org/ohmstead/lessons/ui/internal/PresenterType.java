// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Display;

/**
 * The sizes of type before a room. What is 20 points at a height of 720 pixels grows with the window, so that the back rows read it from
 * any projector; nothing is set smaller. A wide type of a low window is held by its width.
 */
final class PresenterType {
    /** The smallest type, in points at the height below. */
    static final int LEAST_POINTS = 20;

    private static final double HEIGHT = 720;
    private static final double WIDTH = 1280;
    private static final double LEAST_SCALE = 0.5;
    private static final int[] PAGE_POINTS = {38, 34, 30, 27, 24, 22, LEAST_POINTS, 17, 14, 11};
    private static final double POINTS_PER_INCH = 72;
    private static final double PIXELS_PER_INCH = 96;

    private final Display display;
    private final String family;
    private final Map<Integer, Font> plain = new HashMap<>();
    private final Map<Integer, Font> bold = new HashMap<>();
    private double scale = 1;

    PresenterType(Display display) {
        this.display = display;
        family = display.getSystemFont().getFontData()[0].getName();
    }

    /** Takes the size of the window. */
    void fit(int width, int height) {
        scale = Math.max(LEAST_SCALE, Math.min(height / HEIGHT, width / WIDTH));
    }

    /** Returns the sizes to try for a page, the largest first. Those below the least are for texts that would else be cut off. */
    static int[] pagePoints() {
        return PAGE_POINTS.clone();
    }

    /** Returns a length in pixels that grows with the window. */
    int pixels(double atLeastHeight) {
        return (int) Math.round(atLeastHeight * scale);
    }

    /** Returns how many pixels a size has. */
    double pixelsOf(double points) {
        return points * scale * PIXELS_PER_INCH / POINTS_PER_INCH;
    }

    /**
     * Returns a font.
     *
     * @param points its size at a height of 720 pixels
     */
    Font font(double points, boolean strong) {
        int rounded = (int) Math.ceil(pixelsOf(points) * POINTS_PER_INCH / display.getDPI().y);
        return (strong ? bold : plain)
                .computeIfAbsent(rounded, size -> new Font(display, family, size, strong ? SWT.BOLD : SWT.NORMAL));
    }

    void dispose() {
        plain.values().forEach(Font::dispose);
        bold.values().forEach(Font::dispose);
    }
}
