// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.EnumMap;
import java.util.Map;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;

/** The fonts of a help page at one size, made from the control's own font. */
final class HelpFonts {
    private static final Map<HelpBlock.Kind, Double> SIZES =
            Map.of(HelpBlock.Kind.TITLE, 1.65, HelpBlock.Kind.HEADING, 1.25, HelpBlock.Kind.SUBHEADING, 1.08);

    private final LocalResourceManager resources;
    private final FontData[] base;
    private final int zoomPercent;
    private final Map<HelpSpan.Look, Font> plain = new EnumMap<>(HelpSpan.Look.class);

    HelpFonts(Font font, int zoomPercent) {
        this.resources = new LocalResourceManager(JFaceResources.getResources());
        this.base = font.getFontData();
        this.zoomPercent = zoomPercent;
    }

    int zoomPercent() {
        return zoomPercent;
    }

    /** Returns the font of some text within a block. */
    Font of(HelpBlock.Kind kind, HelpSpan.Look look) {
        if (SIZES.containsKey(kind)) {
            return make(FontDescriptor.createFrom(base).withStyle(SWT.BOLD), SIZES.get(kind));
        }
        return plain.computeIfAbsent(look, this::body);
    }

    /** Gives the fonts back. */
    void dispose() {
        resources.dispose();
    }

    private Font body(HelpSpan.Look look) {
        FontDescriptor own = FontDescriptor.createFrom(base);
        return switch (look) {
            case PLAIN -> make(own, 1);
            case STRONG -> make(own.withStyle(SWT.BOLD), 1);
            case EMPHASIS -> make(own.withStyle(SWT.ITALIC), 1);
            case CODE, KEY ->
                make(FontDescriptor.createFrom(JFaceResources.getTextFont()).setHeight(base[0].getHeight()), 0.95);
        };
    }

    private Font make(FontDescriptor font, double size) {
        double points = base[0].getHeight() * size * zoomPercent / 100.0;
        return resources.create(font.setHeight(Math.max(5, (int) Math.round(points))));
    }
}
