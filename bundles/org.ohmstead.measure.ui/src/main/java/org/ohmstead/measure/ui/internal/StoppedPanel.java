// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Says what the emergency stop did and what went wrong, and offers to release it. */
final class StoppedPanel extends Composite {
    private static final Messages TEXTS = Messages.of(StoppedPanel.class);

    private static final double LARGE = 1.6;
    private static final int SENTENCE_WIDTH = 300;

    private final Label words;
    private final Button release;

    StoppedPanel(Composite parent, Runnable askToRelease) {
        super(parent, SWT.NONE);
        Spacing.group(3).applyTo(this);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(this);
        setVisible(false);
        Label icon = new Label(this, SWT.NONE);
        icon.setImage(StateIcons.of(ItemRow.Status.FAILED));
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(icon);
        words = Ids.name(new Label(this, SWT.WRAP), "console.stopped");
        words.setFont(new BigFonts(this).times(LARGE, true));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(words);
        release = Ids.name(new Button(this, SWT.PUSH), "console.release");
        release.setText(TEXTS.text("stop.release"));
        release.addListener(SWT.Selection, event -> askToRelease.run());
        GridDataFactory.swtDefaults().applyTo(release);
    }

    void refresh(RunDesk runs) {
        Optional<EmergencyStop.Report> report = runs.stopped();
        boolean open = report.isPresent() || runs.halted();
        String text = String.join(
                " ", report.map(EmergencyStop.Report::sentences).orElse(List.of(TEXTS.text("stop.isPressed"))));
        release.setEnabled(runs.halted() && !runs.running());
        if (open == getVisible() && (!open || text.equals(words.getText()))) {
            return;
        }
        words.setText(text);
        words.setForeground(Tones.of(this).error());
        setVisible(open);
        ((GridData) getLayoutData()).exclude = !open;
        getParent().layout(true, true);
    }
}
