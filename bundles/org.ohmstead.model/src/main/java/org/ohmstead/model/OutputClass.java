// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How an output stage makes its power, which decides how much of it turns into heat. */
public enum OutputClass {
    /** Linear, with little standing current: class B or AB. */
    CLASS_AB,
    /** Switching. */
    CLASS_D,
    /** Not stated by the maker and not yet known. */
    UNKNOWN
}
