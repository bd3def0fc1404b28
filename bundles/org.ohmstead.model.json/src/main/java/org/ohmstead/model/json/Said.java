// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import org.ohmstead.units.text.Messages;

/** The texts of this package, loaded when the first one is said: who takes a lock, and gets it, needs none. */
final class Said {
    static final Messages TEXTS = Messages.of(Said.class);

    private Said() {}
}
