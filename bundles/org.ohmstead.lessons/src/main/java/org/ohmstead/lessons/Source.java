// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.net.URI;
import java.util.Optional;

/**
 * Where a formula or a value comes from.
 *
 * @param text a standard with its clause, a handbook, or "closed form" with how it is derived
 * @param link where it can be read, if it is public
 */
public record Source(String text, Optional<URI> link) {
    /** Checks the parameters. */
    public Source {
        Checks.named(text, "text");
        Checks.present(link, "link");
    }

    /** Returns a source without a link. */
    public static Source of(String text) {
        return new Source(text, Optional.empty());
    }
}
