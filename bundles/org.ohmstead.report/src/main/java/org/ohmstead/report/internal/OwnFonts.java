// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/**
 * Answers every question for a font with the sheet's own. Without it the PDF library would search the whole machine for fonts and
 * keep a list of them in the user's home folder, only to name fonts that the sheet never uses.
 */
final class OwnFonts implements FontMapper {
    private final TrueTypeFont font;

    OwnFonts() {
        try (InputStream stream = SheetFonts.regular()) {
            font = new TTFParser().parse(new RandomAccessReadBuffer(stream));
        } catch (IOException e) {
            throw new UncheckedIOException("The font of the report bundle cannot be read.", e);
        }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String baseFont, PDFontDescriptor descriptor) {
        return new FontMapping<>(font, false);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String baseFont, PDFontDescriptor descriptor) {
        return new FontMapping<>(font, false);
    }

    @Override
    public CIDFontMapping getCIDFont(String baseFont, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
        return new CIDFontMapping(null, font, false);
    }
}
