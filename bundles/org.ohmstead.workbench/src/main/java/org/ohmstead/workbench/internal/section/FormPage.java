// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.form.Field;
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
import org.ohmstead.workbench.table.EditTable;
import org.ohmstead.workbench.table.TableSpec;

/**
 * The frame of a built-in page: a scrolled body whose fields and tables show the desk's project, change it by named edits, and carry the
 * problems of their values.
 */
final class FormPage implements SectionControl, DeskListener {
    private static final int TABLE_HEIGHT = 260;
    private static final int SMALL_TABLE_HEIGHT = 150;

    private final ProjectDesk desk;
    private final String id;
    private final Composite root;
    /** What stands there without a project; made when it is wanted, which is seldom. */
    private Optional<EmptyNote> closed = Optional.empty();

    private final ScrolledComposite scrolled;
    private final Composite body;
    private final MessageLine readOnlyLine;
    private final List<Binding> bindings = new ArrayList<>();
    private final Slices building;
    private boolean complete;
    private boolean focusedLater;
    private Optional<ProjectPath> revealedLater = Optional.empty();

    FormPage(Composite parent, ProjectDesk desk, String id) {
        this.desk = desk;
        this.id = id;
        root = Ids.name(new Composite(parent, SWT.NONE), id);
        root.setLayout(new StackLayout());
        scrolled = new ScrolledComposite(root, SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setShowFocusedControl(true);
        body = new Composite(scrolled, SWT.NONE);
        Spacing.page(1).applyTo(body);
        scrolled.setContent(body);
        scrolled.addListener(SWT.Resize, event -> fit());
        body.addListener(SWT.Resize, event -> fit());
        readOnlyLine = new MessageLine(body, id + ".readonly");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(readOnlyLine);
        readOnlyLine.setVisible(false);
        building = new Slices(root);
        Registration registration = desk.listen(this);
        root.addListener(SWT.Dispose, event -> registration.close());
    }

    /** Returns what the page's parts lie in, one below the other. */
    Composite body() {
        return body;
    }

    /** Returns the beginning of the names of its widgets. */
    String id() {
        return id;
    }

    /** Returns the project as it is now, or empty when none is open. */
    Optional<Project> project() {
        return desk.session().map(ProjectSession::project);
    }

    /** Changes the project; does nothing when none is open or it is open for reading only. */
    void edit(String name, UnaryOperator<Project> change) {
        desk.session().filter(session -> !session.readOnly()).ifPresent(session -> session.edit(name, change));
    }

    /** Ties something to the project. */
    void add(Binding binding) {
        bindings.add(binding);
    }

    /** Ties a field to a value of the project. */
    <T> void bind(
            Field<T> field,
            String where,
            String editName,
            Function<Project, T> get,
            BiFunction<Project, T, Project> with) {
        field.onCommit(value -> edit(editName, project -> with.apply(project, value)));
        add(new FieldBinding<>(field, where, get));
    }

    /** Adds a heading. */
    Label heading(Composite parent, String text) {
        Label heading = new Label(parent, SWT.NONE);
        heading.setText(text);
        heading.setFont(JFaceResources.getResources()
                .create(FontDescriptor.createFrom(heading.getFont()).setStyle(SWT.BOLD)));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(heading);
        return heading;
    }

    /** Adds a line for a caution or a remark of the page, hidden as long as it is empty. */
    NoteLine note(Composite parent, String noteId) {
        return new NoteLine(parent, id + "." + noteId);
    }

    /** Adds a table of a list of the project, that takes what height is left. */
    <R> EditTable<R> table(
            Composite parent,
            TableSpec<R> spec,
            String where,
            Function<Project, List<R>> get,
            BiFunction<Project, List<R>, Project> with) {
        NoteLine message = note(parent, spec.id() + ".list");
        EditTable<R> table = new EditTable<>(parent, spec);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .hint(SWT.DEFAULT, TABLE_HEIGHT)
                .applyTo(table);
        table.onChange((name, rows) -> edit(name, project -> with.apply(project, rows)));
        add(new TableBinding<>(table, where, get, message));
        return table;
    }

    /** Adds a table of few rows, that keeps its height. */
    <R> EditTable<R> smallTable(
            Composite parent,
            TableSpec<R> spec,
            String where,
            Function<Project, List<R>> get,
            BiFunction<Project, List<R>, Project> with) {
        EditTable<R> table = table(parent, spec, where, get, with);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SWT.DEFAULT, SMALL_TABLE_HEIGHT)
                .applyTo(table);
        return table;
    }

    /** Returns the day on which calibration dates are judged. */
    LocalDate today() {
        return LocalDate.now();
    }

    /**
     * Has a part of the page made in a turn of the event loop of its own, after those before it.
     *
     * @param maker adds widgets and what ties them to the project
     */
    void part(Runnable maker) {
        building.add(() -> {
            int before = bindings.size();
            List<Control> widgetsBefore = below(body);
            maker.run();
            List<Control> fresh = new ArrayList<>(below(body));
            fresh.removeAll(widgetsBefore);
            forgetSizes(fresh);
            List<Binding> made = List.copyOf(bindings.subList(before, bindings.size()));
            project().ifPresent(project -> show(made, project));
        });
        building.add(this::measure);
    }

    /** Shows the page as soon as all parts are there. */
    SectionControl start() {
        building.add(() -> {
            complete = true;
            showBody();
            fit();
            // The user may have gone elsewhere meanwhile.
            if (focusedLater && (root.isFocusControl() || root.getDisplay().getFocusControl() == null)) {
                setFocus();
            }
            revealedLater.ifPresent(this::reveal);
            revealedLater = Optional.empty();
        });
        showSession();
        return this;
    }

    private void show(List<Binding> some, Project project) {
        boolean readOnly = readOnly();
        for (Binding binding : some) {
            binding.showProject(project);
            binding.showProblems(desk.problems());
            binding.setReadOnly(readOnly);
        }
    }

    /** What has been measured did not know these. */
    @SuppressWarnings(
            "deprecation") // what is to be used instead arranges all at once, for a page that is not there yet
    private void forgetSizes(List<Control> fresh) {
        body.changed(fresh.toArray(Control[]::new));
    }

    private static List<Control> below(Composite composite) {
        List<Control> found = new ArrayList<>();
        for (Control child : composite.getChildren()) {
            found.add(child);
            if (child instanceof Composite inner && !(child instanceof EditTable<?>)) {
                found.addAll(below(inner));
            }
        }
        return found;
    }

    /** Measures what is there, so that the whole needs not be measured in one go at the end. */
    private void measure() {
        if (root.getClientArea().width > 0) {
            body.computeSize(root.getClientArea().width, SWT.DEFAULT, false);
        }
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        showSession();
    }

    @Override
    public void stateChanged() {
        showState();
    }

    @Override
    public void projectChanged(Project before, Project after) {
        bindings.forEach(binding -> binding.showProject(after));
        fit();
    }

    @Override
    public void displayChanged(DisplaySettings settings) {
        project().ifPresent(shown -> bindings.forEach(binding -> binding.showDisplay(shown)));
        fit();
    }

    @Override
    public void problemsChanged(List<Problem> problems) {
        bindings.forEach(binding -> binding.showProblems(problems));
        fit();
    }

    private void showSession() {
        Optional<Project> project = project();
        project.ifPresent(shown -> show(bindings, shown));
        showState();
        showBody();
    }

    private EmptyNote closedNote() {
        if (closed.isEmpty()) {
            EmptyNote note = new EmptyNote(root, id + ".closed");
            note.show(Optional.empty(), Texts.text("page.closed"), Texts.text("page.closed.hint"));
            closed = Optional.of(note);
        }
        return closed.get();
    }

    private void showBody() {
        Control shown = project().isEmpty() ? closedNote() : complete ? scrolled : null;
        if (((StackLayout) root.getLayout()).topControl != shown) {
            ((StackLayout) root.getLayout()).topControl = shown;
            root.layout();
        }
    }

    private void showState() {
        boolean readOnly = readOnly();
        bindings.forEach(binding -> binding.setReadOnly(readOnly));
        if (((GridData) readOnlyLine.getLayoutData()).exclude == readOnly) {
            ((GridData) readOnlyLine.getLayoutData()).exclude = !readOnly;
            readOnlyLine.setVisible(readOnly);
            readOnlyLine.requestLayout();
        }
        if (readOnly) {
            readOnlyLine.show(Severity.NOTE, readOnlySentence());
        }
        fit();
    }

    private boolean readOnly() {
        return desk.session().map(ProjectSession::readOnly).orElse(true);
    }

    private String readOnlySentence() {
        return desk.session().stream()
                .flatMap(session -> session.notices().stream())
                .filter(notice -> notice.kind() == SessionNotice.Kind.OPEN_ELSEWHERE
                        || notice.kind() == SessionNotice.Kind.NOT_WRITABLE)
                .map(SessionNotice::sentence)
                .findFirst()
                .orElseGet(() -> Texts.text("page.readonly"));
    }

    /** Brings the height of the scrolled body up to date. */
    void fit() {
        int width = scrolled.getClientArea().width;
        if (width > 0 && complete) {
            scrolled.setMinHeight(
                    body.computeSize(width, SWT.DEFAULT, false).y); // who changes a size asks for a layout
        }
    }

    @Override
    public Control control() {
        return root;
    }

    @Override
    public void reveal(ProblemPlace place) {
        ProjectPath.of(place).ifPresent(this::reveal);
    }

    private void reveal(ProjectPath path) {
        if (!complete) {
            revealedLater = Optional.of(path);
        } else if (bindings.stream().noneMatch(binding -> binding.reveal(path))) {
            setFocus();
        }
    }

    @Override
    public void setFocus() {
        if (!complete) {
            focusedLater = true;
            root.forceFocus();
        } else if (project().isPresent()) {
            body.setFocus();
        } else {
            closedNote().setFocus();
        }
    }
}
