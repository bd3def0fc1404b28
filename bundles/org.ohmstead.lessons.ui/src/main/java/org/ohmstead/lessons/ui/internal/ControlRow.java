// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.ohmstead.lessons.Controls;

/** What a learner moves to set one control. */
interface ControlRow {
    /** Shows where the control stands. */
    void show(Controls values);
}
