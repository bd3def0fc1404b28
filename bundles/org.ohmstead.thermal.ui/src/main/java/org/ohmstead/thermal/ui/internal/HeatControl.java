// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProblemPlace;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.session.SessionNotice;

/** The page's widgets: groups of fields in as many columns as fit, scrolled where there is too little room. */
final class HeatControl implements SectionControl, DeskListener {
    private static final Messages TEXTS = Messages.of(HeatControl.class);
    private static final int LEAST_WIDTH = 400;
    private static final int MOST_COLUMNS = 3;

    private final ProjectDesk desk;
    private final Composite root;
    private final Label closed;
    private final ScrolledComposite scrolled;
    private final Composite body;
    private final Composite columns;
    private final MessageLine readOnlyLine;
    private final Slices building;
    private final HeatBindings bindings;
    private boolean complete;
    private boolean fitting;
    private Optional<String> revealedLater = Optional.empty();

    HeatControl(Composite parent, ProjectDesk desk) {
        this.desk = desk;
        root = Ids.name(new Composite(parent, SWT.NONE), "heat");
        root.setLayout(new StackLayout());
        Composite note = new Composite(root, SWT.NONE);
        Spacing.page(1).applyTo(note);
        closed = Ids.name(new Label(note, SWT.WRAP), "heat.closed");
        closed.setText(TEXTS.text("page.closed"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_WIDTH / 2, SWT.DEFAULT)
                .applyTo(closed);
        scrolled = new ScrolledComposite(root, SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setShowFocusedControl(true);
        body = new Composite(scrolled, SWT.NONE);
        Spacing.page(1).applyTo(body);
        scrolled.setContent(body);
        readOnlyLine = new MessageLine(body, "heat.readonly");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(readOnlyLine);
        readOnlyLine.setVisible(false);
        MessageLine caution = new MessageLine(body, "heat.caution");
        caution.show(Severity.WARNING, SupplyCautions.hotParts());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        columns = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults()
                .equalWidth(true)
                .spacing(2 * Spacing.MARGIN, Spacing.MARGIN)
                .applyTo(columns);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(columns);
        scrolled.addListener(SWT.Resize, event -> arrange());
        bindings = new HeatBindings(desk, this::fit);
        building = new Slices(root);
        group(column -> new OutputGroup(column, bindings));
        group(column -> new CaseGroup(column, bindings));
        group(column -> new SupplyGroup(column, bindings));
        group(column -> new PacingGroup(column, bindings));
        group(column -> new SinkGroup(column, bindings));
        building.add(this::start);
        Registration registration = desk.listen(this);
        root.addListener(SWT.Dispose, event -> registration.close());
        showBody();
    }

    /** Has a group made in one turn of the event loop, filled in the next, and measured in the one after. */
    private void group(Consumer<Composite> maker) {
        building.add(() -> {
            Composite column = column();
            maker.accept(column);
            column.requestLayout();
        });
        building.add(bindings::catchUp);
        building.add(this::measure);
    }

    /** Measures what is there, so that the whole needs not be measured in one go at the end. */
    private void measure() {
        int width = root.getClientArea().width;
        if (width > 0) {
            body.computeSize(width, SWT.DEFAULT, false);
        }
    }

    private Composite column() {
        Composite column = new Composite(columns, SWT.NONE);
        Spacing.group(1).applyTo(column);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.BEGINNING)
                .applyTo(column);
        return column;
    }

    private void start() {
        complete = true;
        showState();
        showBody();
        arrange();
        revealedLater.ifPresent(this::reveal);
        revealedLater = Optional.empty();
    }

    /** Puts the groups into as many columns as fit. */
    private void arrange() {
        int width = scrolled.getClientArea().width - 2 * Spacing.MARGIN;
        int count = Math.max(1, Math.min(MOST_COLUMNS, width / LEAST_WIDTH));
        GridLayout layout = (GridLayout) columns.getLayout();
        if (layout.numColumns != count) {
            layout.numColumns = count;
            columns.requestLayout();
        }
        fit();
    }

    /** Brings the height of the body up to date, once for all that asks for it in this turn. */
    private void fit() {
        if (!fitting && complete) {
            fitting = true;
            root.getDisplay().asyncExec(() -> {
                fitting = false;
                int width = root.isDisposed() ? 0 : scrolled.getClientArea().width;
                if (width > 0) {
                    // Who changes a size asks for a layout, so that what was measured before still holds.
                    scrolled.setMinHeight(body.computeSize(width, SWT.DEFAULT, false).y);
                }
            });
        }
    }

    private Optional<Project> project() {
        return desk.session().map(ProjectSession::project);
    }

    private void showBody() {
        Control shown = project().isEmpty() ? closed.getParent() : complete ? scrolled : null;
        StackLayout stack = (StackLayout) root.getLayout();
        if (stack.topControl != shown) {
            stack.topControl = shown;
            root.layout();
        }
    }

    private void showState() {
        boolean readOnly = desk.session().map(ProjectSession::readOnly).orElse(true);
        bindings.readOnly(readOnly);
        GridData place = (GridData) readOnlyLine.getLayoutData();
        if (place.exclude == readOnly) {
            place.exclude = !readOnly;
            readOnlyLine.setVisible(readOnly);
            readOnlyLine.requestLayout();
        }
        if (readOnly) {
            readOnlyLine.show(Severity.NOTE, readOnlySentence());
        }
        fit();
    }

    private String readOnlySentence() {
        return desk.session().stream()
                .flatMap(session -> session.notices().stream())
                .filter(notice -> notice.kind() == SessionNotice.Kind.OPEN_ELSEWHERE
                        || notice.kind() == SessionNotice.Kind.NOT_WRITABLE)
                .map(SessionNotice::sentence)
                .findFirst()
                .orElse(TEXTS.text("page.readOnly"));
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        bindings.showAll();
        if (complete) {
            showState();
        }
        showBody();
    }

    @Override
    public void projectChanged(Project before, Project after) {
        bindings.show(after);
    }

    @Override
    public void stateChanged() {
        if (complete) {
            showState();
        }
    }

    @Override
    public void problemsChanged(List<Problem> problems) {
        bindings.problems(problems);
    }

    @Override
    public void displayChanged(DisplaySettings settings) {
        project().ifPresent(bindings::show);
    }

    @Override
    public Control control() {
        return root;
    }

    @Override
    public void reveal(ProblemPlace place) {
        reveal(place.field());
    }

    private void reveal(String where) {
        if (!complete) {
            revealedLater = Optional.of(where);
        } else if (!bindings.reveal(where)) {
            setFocus();
        }
    }

    @Override
    public void setFocus() {
        if (complete && project().isPresent()) {
            columns.setFocus();
        } else {
            root.forceFocus();
        }
    }
}
