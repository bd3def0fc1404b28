// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.units.text.Messages;

/** How far a row of a fuse table can be trusted; to be printed wherever it is shown. */
public enum FuseProvenance {
    /** Written down without the standard at hand. */
    FROM_MEMORY,
    /** Read in the source named. */
    SOURCED;

    private static final Messages TEXTS = Messages.of(FuseProvenance.class);

    /** Returns the words to print. */
    public String words() {
        return TEXTS.text("fuse." + name());
    }
}
