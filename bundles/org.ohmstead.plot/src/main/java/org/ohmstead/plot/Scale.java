// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

/** How an axis spaces its values. */
public enum Scale {
    /** Equal steps are equally long. */
    LINEAR,
    /** Equal ratios are equally long; only values above zero have a place. */
    LOG
}
