// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Control;

/** The control's own font in the sizes that are read from afar; disposed with the control. */
final class BigFonts {
    private final Control owner;
    private final LocalResourceManager fonts;

    BigFonts(Control owner) {
        this.owner = owner;
        fonts = new LocalResourceManager(JFaceResources.getResources(), owner);
    }

    /** Returns the font so many times as high. */
    Font times(double factor, boolean bold) {
        FontDescriptor descriptor = FontDescriptor.createFrom(owner.getFont());
        int height = (int) Math.round(factor * owner.getFont().getFontData()[0].getHeight());
        FontDescriptor sized = descriptor.setHeight(Math.max(1, height));
        return fonts.create(bold ? sized.setStyle(SWT.BOLD) : sized);
    }
}
