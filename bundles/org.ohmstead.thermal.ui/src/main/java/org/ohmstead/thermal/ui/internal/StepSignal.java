// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.ohmstead.units.text.Messages;

/** What kind of signal a step carries. */
enum StepSignal {
    STEADY,
    BURST,
    PROGRAMME;

    private static final Messages TEXTS = Messages.of(StepSignal.class);

    String words() {
        return TEXTS.text("signal." + name());
    }
}
