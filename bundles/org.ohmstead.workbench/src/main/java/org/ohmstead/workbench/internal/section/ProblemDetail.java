// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The whole text of the chosen problem below the table or beside it, however narrow the table's columns are. */
final class ProblemDetail extends Composite {
    private static final int TEXT_WIDTH = 300;

    private final Label icon;
    private final Label what;
    private final Label remedy;

    ProblemDetail(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(2).applyTo(this);
        icon = new Label(this, SWT.NONE);
        GridDataFactory.swtDefaults()
                .align(SWT.CENTER, SWT.BEGINNING)
                .hint(16, 16)
                .applyTo(icon);
        what = Ids.name(line(), "problems.detail.what");
        new Label(this, SWT.NONE);
        remedy = Ids.name(line(), "problems.detail.remedy");
    }

    private Label line() {
        Label label = new Label(this, SWT.WRAP);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    /** Lies below the table, as wide as that is. */
    void placeBelow() {
        GridDataFactory.fillDefaults().grab(true, false).applyTo(this);
    }

    /** Lies beside the table. */
    void placeBeside(int width) {
        GridDataFactory.swtDefaults()
                .align(SWT.FILL, SWT.BEGINNING)
                .hint(width, SWT.DEFAULT)
                .applyTo(this);
    }

    /** Shows a problem, or how to see one. */
    void show(Optional<ProblemLine> line, Tones tones) {
        icon.setImage(line.map(shown -> Icons.of(shown.problem().severity())).orElse(null));
        what.setText(line.map(shown -> Texts.text(
                        "problems.detail", shown.place(), shown.problem().what()))
                .orElseGet(() -> Texts.text("problems.detail.none")));
        remedy.setText(line.map(shown -> shown.problem().remedy()).orElseGet(() -> Texts.text("problems.detail.hint")));
        remedy.setForeground(tones.mutedText());
        what.setForeground(line.isPresent() ? tones.text() : tones.mutedText());
        icon.requestLayout();
        what.requestLayout();
        remedy.requestLayout();
    }
}
