// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.jface.layout.TableColumnLayout;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.table.CopiedTable;

/** All problems of the open project, or without one of the program itself, in one table, each with its remedy and a jump to its cause. */
public final class ProblemsComposite extends Composite implements DeskListener {
    private static final List<Severity> SEVERITIES = List.of(Severity.values());
    private static final int FILTER_WIDTH = 110;
    private static final int TABLE_HEIGHT = 120;

    /** Below this height, the detail takes the room of the table's rows. */
    private static final int LOW = 200;

    /** From this width on there is room for the detail beside the table. */
    private static final int WIDE = 700;

    private final ProjectDesk desk;
    private final Consumer<Problem> goTo;
    private final Label count;
    private final Combo severity;
    private final Text filter;
    private final Button goToButton;
    private final Composite stack;
    private final Composite filled;
    private final EmptyNote empty;
    private final Slices building;
    private Table table;
    private ProblemDetail detail;
    private ProblemLine.Column sortColumn = ProblemLine.Column.SEVERITY;
    private boolean descending;
    private List<ProblemLine> shown = List.of();
    private boolean complete;
    private boolean focusedLater;

    /**
     * Makes the view; the table comes in the next turns of the event loop.
     *
     * @param parent what it lies in
     * @param desk whose problems it shows
     * @param goTo jumps to the cause of a problem
     */
    public ProblemsComposite(Composite parent, ProjectDesk desk, Consumer<Problem> goTo) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.goTo = goTo;
        Spacing.page(1).applyTo(this);
        Composite bar = new Composite(this, SWT.NONE);
        Spacing.group(5).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        count = Ids.name(new Label(bar, SWT.NONE), "problems.count");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(count);
        severity = Ids.name(new Combo(bar, SWT.READ_ONLY | SWT.DROP_DOWN), "problems.severity");
        severity.setItems(severityChoices());
        severity.select(0);
        severity.setToolTipText(Texts.text("problems.severity.hint"));
        filter = Ids.name(new Text(bar, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL), "problems.filter");
        filter.setMessage(Texts.text("problems.filter"));
        filter.setToolTipText(Texts.text("problems.filter.hint"));
        GridDataFactory.swtDefaults().hint(FILTER_WIDTH, SWT.DEFAULT).applyTo(filter);
        goToButton = Buttons.push(bar, "problems.goto", Texts.text("problems.goto"));
        goToButton.setToolTipText(Texts.text("problems.goto.hint"));
        goToButton.setEnabled(false);
        Button again = Buttons.push(bar, "problems.check", Texts.text("problems.check"));
        again.setToolTipText(Texts.text("problems.check.hint"));
        stack = new Composite(this, SWT.NONE);
        stack.setLayout(new StackLayout());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(stack);
        filled = new Composite(stack, SWT.NONE);
        Spacing.group(1).applyTo(filled);
        empty = new EmptyNote(stack, "problems.empty");
        building = new Slices(this);
        building.add(() -> table = makeTable(filled));
        building.add(() -> {
            detail = new ProblemDetail(filled);
            placeDetail();
            filled.addListener(SWT.Resize, event -> placeDetail());
        });
        building.add(() -> start(again));
    }

    /** Puts the detail below the table, or beside it in a low view, which would show no row otherwise. */
    private void placeDetail() {
        Point size = filled.getSize();
        boolean beside = size.y < LOW && size.x >= WIDE;
        ((GridLayout) filled.getLayout()).numColumns = beside ? 2 : 1;
        if (beside) {
            // Wide enough for the whole of nearly all texts in the few lines that there are.
            detail.placeBeside(size.x / 2);
        } else {
            detail.placeBelow();
        }
        filled.layout();
    }

    private static String[] severityChoices() {
        List<String> choices = new ArrayList<>(List.of(Texts.text("problems.severity.all")));
        SEVERITIES.forEach(each -> choices.add(Texts.text("problems.severity." + each)));
        return choices.toArray(String[]::new);
    }

    /** Shows the problems when there is where to show them. */
    private void start(Button again) {
        complete = true;
        listen(again);
        Registration registration = desk.listen(this);
        addListener(SWT.Dispose, event -> registration.close());
        showAll();
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            setFocus();
        }
    }

    private Table makeTable(Composite parent) {
        Composite frame = new Composite(parent, SWT.NONE);
        TableColumnLayout layout = new TableColumnLayout();
        frame.setLayout(layout);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .hint(SWT.DEFAULT, TABLE_HEIGHT)
                .applyTo(frame);
        Table made = Ids.name(new Table(frame, SWT.BORDER | SWT.MULTI | SWT.FULL_SELECTION), "problems.table");
        made.setHeaderVisible(true);
        PixelConverter converter = new PixelConverter(made);
        for (ProblemLine.Column column : ProblemLine.Column.values()) {
            TableColumn titled = new TableColumn(made, SWT.LEFT);
            titled.setText(column.title());
            titled.setMoveable(true);
            titled.addListener(SWT.Selection, event -> sortBy(column));
            int least = converter.convertWidthInCharsToPixels(column.leastChars());
            layout.setColumnData(titled, new ColumnWeightData(column.weight(), least, true));
        }
        return made;
    }

    private void listen(Button again) {
        severity.addListener(SWT.Selection, event -> showAll());
        filter.addListener(SWT.Modify, event -> showAll());
        filter.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ARROW_DOWN) {
                table.setFocus();
            }
        });
        goToButton.addListener(SWT.Selection, event -> jump());
        again.addListener(SWT.Selection, event -> checkAgain());
        table.addListener(SWT.DefaultSelection, event -> jump());
        table.addListener(SWT.Selection, event -> showDetail());
        table.addListener(SWT.KeyDown, this::key);
        addListener(SWT.FocusIn, event -> table.setFocus());
    }

    private void key(Event event) {
        if (event.keyCode == SWT.F5) {
            checkAgain();
        } else if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
            copy();
        } else if (event.stateMask == SWT.MOD1 && event.keyCode == 'a') {
            table.selectAll();
            showDetail();
        }
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        showAll();
    }

    @Override
    public void problemsChanged(List<Problem> problems) {
        showAll();
    }

    /** Copies the chosen problems, or all shown when none is chosen, as tab-separated values. */
    public void copy() {
        if (!complete) {
            return; // there is nothing to copy yet
        }
        List<ProblemLine> lines = chosen().isEmpty() ? shown : chosen();
        if (lines.isEmpty()) {
            return;
        }
        CopiedTable.toClipboard(getDisplay(), ProblemLine.asTsv(lines));
    }

    @Override
    public boolean setFocus() {
        if (!complete && !isDisposed()) {
            focusedLater = true;
            return forceFocus();
        }
        // A composite that is being disposed is asked to give the focus to one of its own.
        Control first = shown.isEmpty() ? filter : table;
        return !isDisposed() && !first.isDisposed() && first.setFocus();
    }

    private List<ProblemLine> chosen() {
        List<ProblemLine> lines = new ArrayList<>();
        for (TableItem item : table.getSelection()) {
            lines.add((ProblemLine) item.getData());
        }
        return lines;
    }

    private void checkAgain() {
        // Reading the files and the log anew ends in checking everything.
        desk.lookAtFiles();
        desk.refreshLog();
    }

    private void jump() {
        chosen().stream().findFirst().ifPresent(line -> goTo.accept(line.problem()));
    }

    private void sortBy(ProblemLine.Column column) {
        descending = column == sortColumn && !descending;
        sortColumn = column;
        showAll();
    }

    private void showAll() {
        List<Problem> problems = desk.problems();
        Optional<Project> project = desk.session().map(ProjectSession::project);
        int only = severity.getSelectionIndex();
        Optional<Severity> wanted = only <= 0 ? Optional.empty() : Optional.of(SEVERITIES.get(only - 1));
        List<ProblemLine> lines = new ArrayList<>();
        for (int index = 0; index < problems.size(); index++) {
            Problem problem = problems.get(index);
            String place =
                    project.map(open -> PlaceWords.of(problem.where(), open)).orElse(problem.where());
            lines.add(new ProblemLine(problem, place, index));
        }
        shown = lines.stream()
                .filter(line -> line.matches(wanted, filter.getText()))
                .sorted(sortColumn.order(descending))
                .toList();
        fillTable();
        showCount(problems);
        showTop(problems);
        showDetail();
    }

    private void fillTable() {
        List<ProblemLine> before = chosen();
        table.setRedraw(false);
        table.setSortColumn(table.getColumn(sortColumn.ordinal()));
        table.setSortDirection(descending ? SWT.DOWN : SWT.UP);
        table.removeAll();
        for (ProblemLine line : shown) {
            TableItem item = new TableItem(table, SWT.NONE);
            item.setData(line);
            item.setImage(0, Icons.of(line.problem().severity()));
            for (ProblemLine.Column column : ProblemLine.Column.values()) {
                item.setText(column.ordinal(), line.text(column));
            }
            if (before.stream().anyMatch(old -> old.problem().equals(line.problem()))) {
                table.select(table.indexOf(item));
            }
        }
        table.setRedraw(true);
    }

    private void showCount(List<Problem> problems) {
        String all = desk.session().isEmpty() && problems.isEmpty() ? "" : ProblemLine.counted(problems);
        count.setText(
                shown.size() == problems.size()
                        ? all
                        : Texts.text(
                                "problems.count.shown",
                                Integer.toString(shown.size()),
                                Integer.toString(problems.size())));
    }

    private void showTop(List<Problem> problems) {
        if (desk.session().isEmpty() && problems.isEmpty()) {
            empty.show(Optional.empty(), Texts.text("problems.closed"), Texts.text("problems.closed.hint"));
        } else if (problems.isEmpty()) {
            empty.show(Optional.of("ok"), Texts.text("problems.none"), Texts.text("problems.none.hint"));
        } else if (shown.isEmpty()) {
            empty.show(Optional.empty(), Texts.text("problems.filtered"), Texts.text("problems.filtered.hint"));
        }
        ((StackLayout) stack.getLayout()).topControl = shown.isEmpty() ? empty : filled;
        stack.layout();
    }

    private void showDetail() {
        List<ProblemLine> lines = chosen();
        goToButton.setEnabled(!lines.isEmpty() && desk.session().isPresent());
        detail.show(lines.stream().findFirst(), Tones.of(this));
    }
}
