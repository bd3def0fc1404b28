// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

/** What becomes of edits that were not saved when a project is closed or another takes its place. */
public enum Unsaved {
    /** They are kept: with such edits the project stays open. */
    REFUSE,
    /** They are dropped; the user said so. */
    DISCARD
}
