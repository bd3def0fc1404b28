// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Says in the middle of an empty view what to do so that there will be something. */
final class EmptyState {
    private static final int TEXT_WIDTH = 460;

    private final Composite area;
    private final Label headline;
    private final Label hint;
    private final Button action;

    /**
     * Makes an empty note.
     *
     * @param act done when the button is pressed
     */
    EmptyState(Composite parent, String id, String button, Runnable act) {
        area = new Composite(parent, SWT.NONE);
        Spacing.page(1).applyTo(area);
        Composite middle = new Composite(area, SWT.NONE);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .applyTo(middle);
        Spacing.group(1).applyTo(middle);
        headline = Ids.name(new Label(middle, SWT.NONE), id);
        headline.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        hint = Ids.name(new Label(middle, SWT.WRAP), id + ".hint");
        hint.setForeground(Tones.of(area).mutedText());
        GridDataFactory.swtDefaults().hint(TEXT_WIDTH, SWT.DEFAULT).applyTo(hint);
        action = Ids.name(new Button(middle, SWT.PUSH), id + ".action");
        action.setText(button);
        action.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> act.run()));
    }

    Composite control() {
        return area;
    }

    /** Shows other words, with the button or without. */
    void show(String newHeadline, String newHint, boolean withAction) {
        headline.setText(newHeadline.replace("&", "&&"));
        hint.setText(newHint.replace("&", "&&"));
        action.setVisible(withAction);
        area.layout(true, true);
    }

    boolean focus() {
        return action.isVisible() && action.setFocus();
    }
}
