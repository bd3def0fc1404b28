// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** The test log: which entries there are, everything about the chosen one, voiding, and whether the chain is whole. */
public final class LogComposite extends Composite {
    private static final int WIDE = 760;
    private static final int[] WEIGHTS_WIDE = {66, 34};
    private static final int[] WEIGHTS_NARROW = {58, 42};
    private static final int EMPTY_WIDTH = 420;
    private static final int COLUMNS_AT_ONCE = 5;

    private final ProjectDesk desk;
    private final StackLayout stack = new StackLayout();
    private final Composite page;
    private final Composite emptyPage;
    private final Label empty;
    private final RowFeed feed;
    private final FilterBar filter;
    private final SashForm sash;
    private final Slices building;
    private LogTable table;
    private DetailsPane details;
    private VoidPanel voidPanel;
    private ChainBar chain;
    private LogArrangement arrangement = LogArrangement.NOTHING;
    private boolean wide = true;
    private boolean complete;
    private boolean focusedLater;

    /**
     * Makes the view with a memory of its own for the operator's name; most of its parts come one after the other in
     * the next turns of the event loop.
     */
    public LogComposite(Composite parent, ProjectDesk desk) {
        this(parent, desk, OperatorMemory.ofTheView());
    }

    LogComposite(Composite parent, ProjectDesk desk, OperatorMemory memory) {
        super(parent, SWT.NONE);
        this.desk = desk;
        setLayout(stack);
        emptyPage = new Composite(this, SWT.NONE);
        Spacing.page(1).applyTo(emptyPage);
        empty = Ids.name(new Label(emptyPage, SWT.WRAP | SWT.CENTER), "log.empty");
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .hint(EMPTY_WIDTH, SWT.DEFAULT)
                .applyTo(empty);
        page = new Composite(this, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(page);
        feed = new RowFeed(desk.work(), this::show, this::failed);
        filter = new FilterBar(page, feed, this::enterTable);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(filter.control());
        sash = new SashForm(page, SWT.HORIZONTAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, 120).applyTo(sash);
        Composite listed = room(sash);
        Composite read = room(sash);
        sash.setWeights(WEIGHTS_WIDE);
        Composite bottom = new Composite(page, SWT.NONE);
        Spacing.group(1).applyTo(bottom);
        // What comes here is as high as what is above, since it is made of the same.
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SWT.DEFAULT, filter.control().computeSize(SWT.DEFAULT, SWT.DEFAULT).y)
                .applyTo(bottom);
        page.addListener(SWT.Resize, event -> turnSash(page.getSize().x));
        showTop(desk.log());
        building = new Slices(this);
        building.add(() -> makeTable(listed));
        for (int made = 0; made < LogColumn.values().length; made += COLUMNS_AT_ONCE) {
            building.add(() -> table.addColumns(COLUMNS_AT_ONCE));
        }
        building.add(() -> makeDetails(read));
        building.add(() -> makeChain(bottom));
        building.add(() -> makeVoidPanel(memory, bottom));
        building.add(this::start);
        building.add(this::showDetails);
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        room.setLayout(new FillLayout());
        return room;
    }

    private void makeTable(Composite parent) {
        table = new LogTable(
                parent, this::chosen, column -> feed.order(feed.order().clicked(column)));
        table.control().requestLayout();
    }

    private void makeDetails(Composite parent) {
        details = new DetailsPane(parent);
        details.control().requestLayout();
    }

    private void makeChain(Composite parent) {
        chain = new ChainBar(parent, desk, this::askToVoid, this::showEntry);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(parent);
        parent.requestLayout();
    }

    private void makeVoidPanel(OperatorMemory memory, Composite below) {
        voidPanel = new VoidPanel(page, memory, this::voidEntries);
        voidPanel.control().moveAbove(below);
    }

    /** Fills the parts when all of them are there. */
    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> listening.close());
        logChanged(desk.log());
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            setFocus();
        }
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            voidPanel.close();
            logChanged(desk.log());
        }

        @Override
        public void projectChanged(Project before, Project after) {
            showDetails();
        }

        @Override
        public void stateChanged() {
            allowVoid();
        }

        @Override
        public void logChanged(LogSnapshot log) {
            LogComposite.this.logChanged(log);
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            table.showHeaders();
            filter.relabel();
            feed.again();
            showDetails();
        }

        @Override
        public void chosenEntryChanged(Optional<LogEntry> entry) {
            revealChosen();
        }
    }

    private void logChanged(LogSnapshot log) {
        chain.show(log);
        feed.entries(log.entries());
        showTop(log);
    }

    private void showTop(LogSnapshot log) {
        boolean nothing = log.entries().isEmpty();
        if (nothing) {
            sayWhyEmpty(log);
        }
        stack.topControl = nothing ? emptyPage : page;
        layout();
    }

    private void sayWhyEmpty(LogSnapshot log) {
        Tones tones = Tones.of(this);
        boolean bad = log.state() == LogState.UNREADABLE || log.state() == LogState.BROKEN;
        String sentence;
        if (desk.session().isEmpty()) {
            sentence = "No project is open. Open one to see its test log, or open the demo.";
        } else if (log.state() == LogState.READING) {
            sentence = "Reading the test log\u2026";
        } else if (bad) {
            sentence = log.sentence();
        } else {
            sentence = "No readings yet. Replay recordings with Bench > Replay recordings\u2026, or open the demo.";
        }
        empty.setText(sentence.replace("&", "&&"));
        empty.setForeground(bad ? tones.error() : tones.mutedText());
        emptyPage.layout();
    }

    private void show(LogArrangement wanted) {
        if (isDisposed() || !complete) {
            return; // what was asked of the filter so far is answered when all is there
        }
        arrangement = wanted;
        table.show(wanted, feed.order());
        filter.show(wanted);
        revealChosen();
    }

    private void failed(Exception failure) {
        if (!isDisposed()) {
            chain.fail(failure);
        }
    }

    private void chosen(Optional<LogRow> row) {
        desk.choose(row.map(LogRow::entry));
        allowVoid();
    }

    private void revealChosen() {
        Optional<LogEntry> chosen = desk.chosenEntry();
        if (chosen.isPresent()) {
            table.reveal(chosen.get().id());
        } else {
            table.selectNothing();
        }
        showDetails();
        allowVoid();
    }

    private void showDetails() {
        if (!building.done()) {
            return; // a turn of its own for this comes last
        }
        Optional<LogEntry> chosen =
                desk.chosenEntry().flatMap(entry -> desk.log().entry(entry.id()));
        Optional<ProjectSession> session = desk.session();
        if (chosen.isEmpty() || session.isEmpty()) {
            details.showHint("Select an entry to see everything about it: each channel's figures, conditions,"
                    + " uncertainty budget, instruments and captures.");
            return;
        }
        Project project = session.get().project();
        String revision = session.get().revisionSha256();
        Supplier<Details> written = () -> EntryDetails.of(chosen.get(), project, revision);
        Details shown = written.get();
        boolean hidden = arrangement.indexOf(chosen.get().id()) < 0;
        details.show(
                hidden ? shown.under("The filter hides this entry; Show all brings it back.") : shown,
                () -> Numbers.withPoint(written).plainText());
    }

    private void allowVoid() {
        List<LogRow> selected = table.selected();
        String whyNot = "";
        if (desk.session().map(ProjectSession::readOnly).orElse(true)) {
            whyNot = "The project is open for reading only.";
        } else if (desk.log().state() == LogState.BROKEN) {
            whyNot = "The log is not whole. Restore it from a backup first.";
        } else if (selected.isEmpty()) {
            whyNot = "Select an entry first.";
        } else if (selected.stream().noneMatch(LogRow::voidable)) {
            whyNot = "What is selected is voided already, or is a void itself.";
        }
        chain.allowVoid(whyNot);
        if (!whyNot.isEmpty() && voidPanel.isOpen()) {
            voidPanel.close();
        }
    }

    private void askToVoid() {
        voidPanel.ask(table.selected().stream()
                .filter(LogRow::voidable)
                .map(row -> row.entry().id())
                .toList());
    }

    private void voidEntries(List<String> entryIds, String operator, String reason) {
        table.control().setFocus();
        for (String entryId : entryIds) {
            desk.voidEntry(entryId, operator, reason, this::failed);
        }
    }

    /** Shows an entry even when the filter hides it. */
    private void showEntry(String entryId) {
        Optional<LogEntry> entry = desk.log().entry(entryId);
        if (entry.isPresent() && arrangement.indexOf(entryId) < 0) {
            filter.clear();
        }
        desk.choose(entry);
    }

    private void enterTable() {
        if (complete) {
            table.enter();
        }
    }

    private void turnSash(int width) {
        filter.arrange(width);
        boolean nowWide = width >= WIDE;
        if (nowWide != wide) {
            wide = nowWide;
            sash.setOrientation(wide ? SWT.HORIZONTAL : SWT.VERTICAL);
            sash.setWeights(wide ? WEIGHTS_WIDE : WEIGHTS_NARROW);
        }
    }

    @Override
    public boolean setFocus() {
        if (!isDisposed() && !complete) {
            focusedLater = true;
            return forceFocus();
        }
        // A composite that is being disposed is asked to give the focus to one of its own.
        if (stack.topControl == page && !table.control().isDisposed()) {
            return table.control().setFocus();
        }
        return !isDisposed() && super.setFocus();
    }
}
