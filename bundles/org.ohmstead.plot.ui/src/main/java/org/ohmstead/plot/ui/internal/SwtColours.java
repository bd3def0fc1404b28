// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import org.eclipse.swt.graphics.Color;

/** Colours of a chart's look for SWT; such colours need no disposing. */
final class SwtColours {
    private SwtColours() {}

    static Color of(int rgb) {
        return new Color(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF);
    }

    static int rgb(Color colour) {
        return colour.getRed() << 16 | colour.getGreen() << 8 | colour.getBlue();
    }
}
