// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;

/** What stands in the place of a log that has no entries: why, and what to do. */
final class EmptyLog {
    private static final Messages TEXTS = Messages.of(EmptyLog.class);
    private static final int WIDTH = 420;

    private final Composite page;
    private final Label words;

    EmptyLog(Composite parent) {
        page = new Composite(parent, SWT.NONE);
        Spacing.page(1).applyTo(page);
        words = Ids.name(new Label(page, SWT.WRAP | SWT.CENTER), "log.empty");
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .hint(WIDTH, SWT.DEFAULT)
                .applyTo(words);
    }

    Composite page() {
        return page;
    }

    void show(ProjectDesk desk) {
        LogSnapshot log = desk.log();
        Tones tones = Tones.of(page);
        boolean bad = log.state() == LogState.UNREADABLE || log.state() == LogState.BROKEN;
        String sentence;
        if (desk.session().isEmpty()) {
            sentence = TEXTS.text("empty.noProject");
        } else if (log.state() == LogState.READING) {
            sentence = TEXTS.text("empty.reading");
        } else if (bad) {
            sentence = log.sentence();
        } else {
            sentence = TEXTS.text("empty.noReadings");
        }
        words.setText(sentence.replace("&", "&&"));
        words.setForeground(bad ? tones.error() : tones.mutedText());
        page.layout();
    }
}
