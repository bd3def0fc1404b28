// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.FiguresReader;
import org.ohmstead.model.json.internal.FiguresWriter;
import org.ohmstead.model.json.internal.Findings;
import org.ohmstead.model.json.internal.JsonSource;

/** Figures of a measurement as canonical JSON text, which is what the test log stores and hashes. */
public final class MeasuredFiguresJson {
    private MeasuredFiguresJson() {}

    /**
     * Returns figures in the canonical form of {@link CanonicalJson}. {@link #fromText} gives equal figures back, except that a negative
     * zero comes back as zero.
     */
    public static String toCanonicalText(MeasuredFigures figures) {
        return FiguresWriter.toText(figures);
    }

    /**
     * Returns the figures that a JSON text holds. Fields that are not known are passed over.
     *
     * @throws ProjectFileException when the text is not JSON or not figures; the message names the place and the remedy
     */
    public static MeasuredFigures fromText(String json) throws ProjectFileException {
        JsonSource source = JsonSource.named("file.label.figures", json);
        return FiguresReader.figures(FieldReader.root(source, source.parse(), new Findings()));
    }
}
