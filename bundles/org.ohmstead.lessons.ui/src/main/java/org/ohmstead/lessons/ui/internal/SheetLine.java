// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** What became of a sheet, with a way to open it for printing. */
final class SheetLine {
    private final Composite area;
    private final MessageLine message;
    private final Button open;
    private Optional<Path> file = Optional.empty();

    SheetLine(Composite parent, Consumer<Path> opener) {
        area = new Composite(parent, SWT.NONE);
        Spacing.group(2).applyTo(area);
        message = new MessageLine(area, "lesson.message");
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .applyTo(message);
        open = Ids.name(new Button(area, SWT.PUSH), "lesson.sheet.open");
        open.setText(Texts.say("sheet.open"));
        open.setToolTipText(Texts.say("sheet.open.hint"));
        open.addListener(SWT.Selection, event -> file.ifPresent(opener));
        GridDataFactory.fillDefaults().exclude(true).applyTo(open);
        open.setVisible(false);
    }

    Composite control() {
        return area;
    }

    void written(Path made) {
        file = Optional.of(made);
        message.mention(Texts.plain(Texts.say("sheet.written", made)));
        Parts.show(open, true);
    }

    void show(Severity severity, String sentence) {
        Parts.show(open, false);
        message.show(severity, Texts.plain(sentence));
    }

    void clear() {
        Parts.show(open, false);
        message.clear();
    }
}
