// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import org.ohmstead.model.Reading;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.Findings;
import org.ohmstead.model.json.internal.JsonSource;
import org.ohmstead.model.json.internal.ReadingReader;
import org.ohmstead.model.json.internal.ReadingWriter;

/** Readings as canonical JSON text, which is what the test log stores and hashes. */
public final class ReadingJson {
    private ReadingJson() {}

    /**
     * Returns a reading in the canonical form of {@link CanonicalJson}. {@link #fromText} gives an equal reading back, except that a
     * negative zero comes back as zero.
     */
    public static String toCanonicalText(Reading reading) {
        return ReadingWriter.toText(reading);
    }

    /**
     * Returns the reading that a JSON text holds. Fields that are not known are passed over.
     *
     * @throws ProjectFileException when the text is not JSON or not a reading; the message names the place and the remedy
     */
    public static Reading fromText(String json) throws ProjectFileException {
        JsonSource source = JsonSource.named("file.label.reading", json);
        return ReadingReader.reading(FieldReader.root(source, source.parse(), new Findings()));
    }
}
