// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** What sort of stimulus an output power was found with. */
public enum PowerKind {
    /** A steady tone. */
    CONTINUOUS,
    /** A tone burst: power inside the burst only. */
    BURST
}
