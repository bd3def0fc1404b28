// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import org.ohmstead.units.text.Messages;

/** Something was refused because the open project has edits that were not saved; the user is to be asked first. */
public final class UnsavedEdits extends SessionException {
    private static final Messages TEXTS = Messages.of(UnsavedEdits.class);
    private static final long serialVersionUID = 1L;

    /**
     * Makes the refusal.
     *
     * @param title what the open project is called
     */
    public UnsavedEdits(String title) {
        super(TEXTS.text("edits.unsaved", title));
    }
}
