// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.net.URI;
import java.util.Optional;

/**
 * Where a formula or a value comes from.
 *
 * @param text a standard with its clause, a handbook, or "closed form" with how it is derived
 * @param link where it can be read, if it is public: an address of the web, which a sheet may show as a link
 */
public record Source(String text, Optional<URI> link) {
    /** Checks the parameters. */
    public Source {
        Checks.named(text, "text");
        Checks.present(link, "link");
        link.ifPresent(Source::checkWebAddress);
    }

    /** Returns a source without a link. */
    public static Source of(String text) {
        return new Source(text, Optional.empty());
    }

    private static void checkWebAddress(URI link) {
        String scheme = link.getScheme();
        if (!"https".equalsIgnoreCase(scheme) && !"http".equalsIgnoreCase(scheme)) {
            throw new IllegalArgumentException("link is \"" + link + "\"; it must begin with https: or http:");
        }
    }
}
