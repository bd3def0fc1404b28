// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.util.List;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.ReadingJson;

/** What makes two imported readings the same: all that was found and under what, but not which file it came in. */
public final class ReadingKey {
    private static final String ANY = "any";

    private ReadingKey() {}

    /** Returns the key, 64 hexadecimal digits. */
    public static String of(Reading reading) {
        Provenance provenance = reading.provenance();
        Reading bare = reading.withProvenance(
                        new Provenance(ANY, ANY, ANY, ANY, "", List.of(), List.of(), provenance.specimen()))
                .withNotes(List.of());
        return Sha256.hex(ReadingJson.toCanonicalText(bare));
    }
}
