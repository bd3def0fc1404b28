// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.ProgressBar;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.search.IndexState;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** Says how far the index is while it learns what is new in a long log, and why it cannot be used. */
final class IndexLine {
    private static final Messages TEXTS = Messages.of(IndexLine.class);

    /** Fewer new entries are learned before one has read that they are. */
    private static final long WORTH_TELLING = 2000;

    private static final int SCALE = 1000;
    private static final int BAR_WIDTH = 140;

    private final Composite line;
    private final MessageLine words;
    private final ProgressBar bar;

    IndexLine(Composite parent) {
        line = new Composite(parent, SWT.NONE);
        Spacing.group(2).applyTo(line);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(line);
        line.setVisible(false);
        bar = Ids.name(new ProgressBar(line, SWT.HORIZONTAL), "log.index.bar");
        bar.setMaximum(SCALE);
        GridDataFactory.fillDefaults()
                .hint(BAR_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(bar);
        words = new MessageLine(line, "log.index");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(words);
    }

    void show(LogSearch search) {
        IndexState state = search.state();
        boolean behind = search.catchingUp() && state.total() - state.indexed() > WORTH_TELLING;
        if (!search.failure().isEmpty()) {
            words.show(Severity.ERROR, search.failure());
        } else if (behind) {
            words.mention(TEXTS.text("index.behind", Long.toString(state.indexed()), Long.toString(state.total())));
        } else if (!state.kept() && !state.remark().isEmpty()) {
            words.show(Severity.NOTE, state.remark());
        } else {
            words.clear();
        }
        if (behind) {
            bar.setSelection((int) (SCALE * state.indexed() / state.total()));
        }
        bar.setVisible(behind);
        ((GridData) bar.getLayoutData()).exclude = !behind;
        boolean visible = !words.text().isEmpty();
        if (line.getVisible() != visible) {
            line.setVisible(visible);
            ((GridData) line.getLayoutData()).exclude = !visible;
            line.getParent().requestLayout();
        }
        line.requestLayout();
    }
}
