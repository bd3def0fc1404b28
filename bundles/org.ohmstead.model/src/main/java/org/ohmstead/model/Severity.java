// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How much a {@link Problem} matters. */
public enum Severity {
    /** Something cannot be done until this is mended. */
    ERROR,
    /** It can be done, but the result or the safety suffers. */
    WARNING,
    /** Worth knowing. */
    NOTE
}
