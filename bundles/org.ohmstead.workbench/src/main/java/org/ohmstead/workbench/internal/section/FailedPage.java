// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.session.ProblemPlace;

/** Stands where a page should be that threw: says so, and which class it was. */
final class FailedPage implements SectionControl {
    private static final int TEXT_WIDTH = 480;

    private final Composite page;

    FailedPage(Composite parent, String name, String sentence, String className) {
        page = Ids.name(new Composite(parent, SWT.NONE), "section.failed");
        Spacing.page(2).applyTo(page);
        Label icon = new Label(page, SWT.NONE);
        icon.setImage(Icons.of(Severity.ERROR));
        GridDataFactory.swtDefaults().align(SWT.CENTER, SWT.BEGINNING).applyTo(icon);
        Label what = line(Texts.text("page.failed", name, sentence));
        Ids.name(what, "section.failed.sentence");
        new Label(page, SWT.NONE);
        Label remedy = line(Texts.text("page.failed.remedy", className));
        remedy.setForeground(Tones.of(page).mutedText());
    }

    private Label line(String text) {
        Label label = new Label(page, SWT.WRAP);
        label.setText(text);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    @Override
    public Control control() {
        return page;
    }

    @Override
    public void reveal(ProblemPlace place) {
        setFocus();
    }

    @Override
    public void setFocus() {
        page.setFocus();
    }
}
