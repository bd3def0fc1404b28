// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How the values that an input of a budget may have are distributed (GUM 4.3 and 4.4). */
public enum PartShape {
    /** A normal distribution; with degrees of freedom, a t-distribution. */
    NORMAL,
    /** Every value between two bounds alike: a specification's bound, a display's last digit. */
    RECTANGULAR,
    /** The middle of two bounds likelier than the bounds themselves. */
    TRIANGULAR
}
