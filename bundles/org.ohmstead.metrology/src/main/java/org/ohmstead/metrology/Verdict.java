// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

/** What a measurement says about a limit. */
public enum Verdict {
    /** The limit is kept, as surely as the decision rule asks. */
    MEETS,
    /** The limit is missed, as surely as the decision rule asks. */
    FALLS_SHORT,
    /** The measurement is too uncertain to say either. */
    UNDECIDED
}
