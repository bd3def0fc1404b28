// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Recovery;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.session.SessionException;
import org.ohmstead.workbench.session.SessionNotice;

/**
 * What the user should know of the open project, a line each, with what can be done about it; takes no room while there is
 * nothing to say.
 */
public final class NoticeStrip extends Composite implements DeskListener {
    private static final Messages TEXTS = Messages.of(NoticeStrip.class);
    private static final int TEXT_WIDTH = 160;

    /** Something that may fail with a sentence for the user. */
    @FunctionalInterface
    private interface Action {
        void run() throws SessionException;
    }

    /** What can be done about a notice; its name is that of the text on the button and of the button. */
    private record Offer(String name, Action action) {}

    private final ProjectDesk desk;
    private List<SessionNotice> shown = List.of();

    /** Makes the strip and follows the desk. */
    public NoticeStrip(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        Ids.name(this, "notices");
        Registration registration = desk.listen(this);
        addDisposeListener(event -> registration.close());
        show();
    }

    private void show() {
        shown = desk.notices();
        for (Control child : getChildren()) {
            child.dispose();
        }
        boolean any = !desk.notices().isEmpty();
        GridLayoutFactory.fillDefaults()
                .margins(any ? Spacing.MARGIN : 0, any ? Spacing.TIGHT : 0)
                .spacing(0, Spacing.TIGHT)
                .applyTo(this);
        for (SessionNotice notice : desk.notices()) {
            line(notice);
        }
        if (getLayoutData() instanceof GridData data) {
            data.exclude = !any;
        }
        setVisible(any);
        getParent().layout(true, true);
    }

    private void line(SessionNotice notice) {
        List<Offer> offers = offers(notice);
        Composite line = new Composite(this, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(line);
        GridLayoutFactory.fillDefaults()
                .numColumns(2 + offers.size())
                .spacing(Spacing.GAP, 0)
                .applyTo(line);
        Label icon = new Label(line, SWT.NONE);
        icon.setImage(Icons.of(severity(notice)));
        Label text = new Label(line, SWT.WRAP);
        text.setText(notice.sentence());
        Ids.name(text, "notice." + notice.kind().name().toLowerCase(Locale.ROOT));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .applyTo(text);
        for (Offer offer : offers) {
            Button button = new Button(line, SWT.PUSH);
            button.setText(TEXTS.text("notice." + offer.name()));
            Ids.name(button, "notice." + offer.name());
            button.addListener(SWT.Selection, event -> run(offer.action()));
        }
    }

    private List<Offer> offers(SessionNotice notice) {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            return List.of();
        }
        Optional<Recovery> recovery = session.get().recovery();
        if (notice.kind() == SessionNotice.Kind.RECOVERY_FOUND && recovery.isPresent()) {
            return List.of(
                    new Offer("recover", recovery.get()::recover), new Offer("discard", recovery.get()::discard));
        }
        if (notice.kind() == SessionNotice.Kind.CONFLICT) {
            return List.of(
                    new Offer("reload", session.get()::reloadFromDisk), new Offer("keepMine", session.get()::keepMine));
        }
        return List.of();
    }

    private void run(Action action) {
        try {
            action.run();
        } catch (SessionException e) {
            MessageDialog.openError(getShell(), TEXTS.text("notice.failed"), e.getMessage());
        }
        if (!isDisposed()) {
            show();
        }
    }

    private static Severity severity(SessionNotice notice) {
        return switch (notice.kind()) {
            case RELOADED, WRITABLE_NOW -> Severity.NOTE;
            case VANISHED, UNREADABLE, RECOVERY_FAILED -> Severity.ERROR;
            default -> Severity.WARNING;
        };
    }

    private void showWhenChanged() {
        if (!shown.equals(desk.notices())) {
            show();
        }
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        showWhenChanged();
    }

    @Override
    public void stateChanged() {
        showWhenChanged();
    }

    @Override
    public void noticed(SessionNotice notice) {
        showWhenChanged();
    }
}
