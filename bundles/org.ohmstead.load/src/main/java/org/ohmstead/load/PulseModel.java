// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

/** How to go from the one overload that a maker allows to others. Both are models, to be named beside their results. */
public enum PulseModel {
    /**
     * The energy is the same however short the pulse: no heat leaves meanwhile. Cautious for pulses longer than the maker's, bold for far
     * shorter ones, which heat the wire alone.
     */
    CONSTANT_ENERGY,
    /** One time constant: the maker's overload just brings the rise that the rated power reaches in the end. */
    FIRST_ORDER
}
