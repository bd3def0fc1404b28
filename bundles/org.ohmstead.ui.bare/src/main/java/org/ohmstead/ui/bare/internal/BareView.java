// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.bare.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;

/** A view that shows nothing. */
public final class BareView extends ViewPart {
    static final String ID = "org.ohmstead.ui.bare.view";

    private Composite content;

    @Override
    public void createPartControl(Composite parent) {
        content = new Composite(parent, SWT.NONE);
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
