// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What a view shows in its middle when it has nothing to list: what that means, and what to do next. */
final class EmptyNote extends Composite {
    private static final int TEXT_WIDTH = 420;

    private final Label icon;
    private final Label headline;
    private final Label hint;

    EmptyNote(Composite parent, String id) {
        super(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().margins(Spacing.MARGIN, Spacing.MARGIN).applyTo(this);
        Composite middle = new Composite(this, SWT.NONE);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .applyTo(middle);
        Spacing.group(2).applyTo(middle);
        icon = new Label(middle, SWT.NONE);
        GridDataFactory.swtDefaults().exclude(true).applyTo(icon);
        headline = Ids.name(new Label(middle, SWT.NONE), id);
        headline.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        hint = Ids.name(new Label(middle, SWT.WRAP), id + ".hint");
        hint.setForeground(Tones.of(this).mutedText());
        GridDataFactory.swtDefaults().span(2, 1).hint(TEXT_WIDTH, SWT.DEFAULT).applyTo(hint);
    }

    /** Shows an icon or none, a headline and a sentence of help. */
    void show(Optional<String> iconName, String newHeadline, String newHint) {
        iconName.ifPresent(name -> icon.setImage(Icons.image(name)));
        icon.setVisible(iconName.isPresent());
        ((GridData) icon.getLayoutData()).exclude = iconName.isEmpty();
        headline.setText(newHeadline);
        hint.setText(newHint);
        layout(true, true);
    }
}
