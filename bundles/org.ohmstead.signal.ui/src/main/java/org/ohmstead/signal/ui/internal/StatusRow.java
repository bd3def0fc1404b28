// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** What is being done or what is to be known, in a row that is there only when there is something to say. */
public final class StatusRow extends Composite {
    private static final int PATIENCE_MILLISECONDS = 250;

    private final MessageLine message;
    private final Button stop;
    private String working = "";

    /**
     * Makes a hidden row; it lies in a grid.
     *
     * @param stopped called when the user wants the work to end
     */
    public StatusRow(Composite parent, Runnable stopped) {
        super(parent, SWT.NONE);
        Spacing.group(2).applyTo(this);
        message = new MessageLine(this, "capture.message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
        stop = Ids.name(new Button(this, SWT.PUSH), "capture.stop");
        stop.setText(Texts.say("view.stop"));
        stop.addListener(SWT.Selection, event -> stopped.run());
        GridDataFactory.swtDefaults().applyTo(stop);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(this);
        clear();
    }

    /** Says what is being done, with a way to stop it; what is done at once is not worth a word. */
    public void working(String what) {
        boolean first = working.isEmpty();
        working = what;
        if (first) {
            getDisplay().timerExec(PATIENCE_MILLISECONDS, this::showWorking);
        } else if (stop.getVisible()) {
            showWorking();
        }
    }

    private void showWorking() {
        if (!isDisposed() && !working.isEmpty()) {
            message.mention(working);
            reveal(true, true);
        }
    }

    /** Says something of that weight. */
    public void tell(Severity severity, String sentences) {
        working = "";
        message.show(severity, sentences);
        reveal(true, false);
    }

    /** Takes the row away. */
    public void clear() {
        working = "";
        message.clear();
        reveal(false, false);
    }

    private void reveal(boolean row, boolean stoppable) {
        ((GridData) stop.getLayoutData()).exclude = !stoppable;
        stop.setVisible(stoppable);
        ((GridData) getLayoutData()).exclude = !row;
        setVisible(row);
        layout(true, true);
        requestLayout();
    }
}
