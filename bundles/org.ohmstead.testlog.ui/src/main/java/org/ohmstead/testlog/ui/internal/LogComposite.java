// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** The test log: which entries there are, everything about the chosen one, voiding, and whether the chain is whole. */
public final class LogComposite extends Composite {
    private static final Messages TEXTS = Messages.of(LogComposite.class);
    private static final int WIDE = 760;
    private static final int[] WEIGHTS_WIDE = {66, 34};
    private static final int[] WEIGHTS_NARROW = {58, 42};
    private static final int COLUMNS_AT_ONCE = 5;

    private final ProjectDesk desk;
    private final LogSearch search;
    private final Keeping keeping;
    private final StackLayout stack = new StackLayout();
    private final Composite page;
    private final EmptyLog empty;
    private final LogFeed feed;
    private final FilterBar filter;
    private final IndexLine indexLine;
    private final SashForm sash;
    private final Slices building;
    private LogDeeds deeds;
    private LogTable table;
    private SelectedRows selected;
    private EntryRoom reading;
    private VoidPanel voidPanel;
    private ChainBar chain;
    private LogRows rows = LogRows.NONE;
    private long offeredAt = -1;
    private boolean hidden;
    private boolean wide = true;
    private boolean complete;
    private boolean focusedLater;

    /**
     * What the view remembers and what it asks of the workbench.
     *
     * @param operator who works at the bench
     * @param filters the saved filters
     * @param compare opens the view in which two readings are compared
     */
    record Keeping(OperatorMemory operator, SavedFilters filters, Runnable compare) {
        static Keeping ofTheView() {
            return new Keeping(OperatorMemory.ofTheView(), SavedFilters.ofTheView(), () -> {});
        }
    }

    /**
     * Makes the view with a memory of its own for the operator's name and the filters; most of its parts come one after the other in
     * the next turns of the event loop.
     */
    public LogComposite(Composite parent, ProjectDesk desk) {
        this(parent, desk, LogSearch.of(desk), Keeping.ofTheView());
    }

    LogComposite(Composite parent, ProjectDesk desk, LogSearch search, Keeping keeping) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.search = search;
        this.keeping = keeping;
        setLayout(stack);
        empty = new EmptyLog(this);
        page = new Composite(this, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(page);
        feed = new LogFeed(search, () -> complete ? table.topIndex() : 0, new Answers());
        filter = new FilterBar(page, keeping.filters(), feed::find, this::enterTable);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(filter.control());
        indexLine = new IndexLine(page);
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
        showTop();
        building = new Slices(this);
        building.add(() -> makeTable(listed));
        for (int made = 0; made < LogColumn.values().length; made += COLUMNS_AT_ONCE) {
            building.add(() -> table.cells().addColumns(COLUMNS_AT_ONCE));
        }
        building.add(filter::makeMore);
        building.add(() -> makeDetails(read));
        building.add(() -> makeChain(bottom));
        building.add(() -> makeVoidPanel(bottom));
        building.add(this::start);
        building.add(this::showDetails);
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        room.setLayout(new FillLayout());
        return room;
    }

    private void makeTable(Composite parent) {
        deeds = new LogDeeds(parent, desk, search, feed, this::fail, this::allow);
        table = deeds.table();
        selected = deeds.selected();
        parent.layout();
    }

    private void makeDetails(Composite parent) {
        reading = new EntryRoom(parent, desk.work());
        parent.layout();
    }

    private void makeChain(Composite parent) {
        chain = new ChainBar(parent, desk, this::askToVoid, this::compare, this::showEntry);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(parent);
        parent.requestLayout();
    }

    private void makeVoidPanel(Composite below) {
        voidPanel = new VoidPanel(page, keeping.operator(), this::voidEntries);
        voidPanel.control().moveAbove(below);
    }

    /** Fills the parts when all of them are there. */
    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        Registration following = search.listen(this::indexChanged);
        addDisposeListener(event -> {
            listening.close();
            following.close();
        });
        chain.show(desk.log());
        feed.turn();
        indexChanged();
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            setFocus();
        }
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            voidPanel.close();
            offeredAt = -1;
            feed.turn();
            logChanged(desk.log());
        }

        @Override
        public void projectChanged(Project before, Project after) {
            showDetails();
        }

        @Override
        public void stateChanged() {
            allow();
        }

        @Override
        public void logChanged(LogSnapshot log) {
            chain.show(log);
            showTop();
            offerChoices();
            showDetails();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            table.cells().showHeaders();
            filter.relabel();
            reading.showDisplay();
            feed.again();
            showDetails();
        }

        @Override
        public void chosenEntryChanged(Optional<LogEntry> entry) {
            revealChosen();
        }
    }

    /** What the feed answers. */
    private final class Answers implements LogFeed.Shown {
        @Override
        public void rows(LogRows found) {
            if (isDisposed() || !complete) {
                return; // what was asked of the filter so far is answered when all is there
            }
            rows = found;
            selected.among(found);
            table.show(found);
            filter.show(found);
            showTop();
            revealChosen();
        }

        @Override
        public void page(int from, int count) {
            if (!isDisposed()) {
                table.arrived(from, count);
            }
        }

        @Override
        public void failed(Exception why) {
            fail(why);
        }
    }

    private void indexChanged() {
        if (isDisposed()) {
            return;
        }
        indexLine.show(search);
        showTop();
        offerChoices();
        feed.again();
    }

    /** Offers in the filter what occurs in the log, when that may have changed. */
    private void offerChoices() {
        List<LogEntry> entries = desk.log().entries();
        long now = search.state().indexed() + entries.size();
        if (!search.catchingUp() && now != offeredAt) {
            offeredAt = now;
            search.ask(TEXTS.text("offer.looking"), finder -> FilterOffer.of(finder, entries), this::offer, this::fail);
        }
    }

    private void offer(Optional<FilterOffer> offer) {
        if (!isDisposed()) {
            filter.offer(offer.orElse(FilterOffer.NOTHING));
        }
    }

    private void showTop() {
        boolean nothing = search.state().total() == 0 && desk.log().total() == 0;
        if (nothing) {
            empty.show(desk);
        }
        Composite wanted = nothing ? empty.page() : page;
        if (stack.topControl != wanted) {
            stack.topControl = wanted;
            layout();
        }
    }

    private void fail(Exception failure) {
        if (!isDisposed() && complete) {
            chain.fail(failure);
        }
    }

    private void revealChosen() {
        hidden = false;
        Optional<LogEntry> chosen = desk.chosenEntry();
        if (chosen.isEmpty()) {
            table.reveal(-1);
        } else {
            String id = chosen.get().id();
            Optional<Integer> place = rows.place(id);
            if (place.isPresent()) {
                reveal(place.get());
            } else {
                feed.place(id, found -> {
                    if (!isDisposed()
                            && desk.chosenEntry()
                                    .filter(entry -> entry.id().equals(id))
                                    .isPresent()) {
                        reveal(found);
                        showDetails();
                        allow();
                    }
                });
            }
        }
        showDetails();
        allow();
    }

    private void reveal(int place) {
        table.reveal(place);
        hidden = place < 0;
    }

    private void showDetails() {
        if (!building.done()) {
            return; // a turn of its own for this comes last
        }
        // The snapshot knows whether it was voided meanwhile.
        Optional<LogEntry> chosen =
                desk.chosenEntry().map(entry -> desk.log().entry(entry.id()).orElse(entry));
        reading.show(chosen, desk.session(), hidden);
    }

    private void allow() {
        String whyNot = selected.whyNotVoid();
        chain.allowVoid(whyNot);
        chain.allowCompare(!selected.pair().isEmpty());
        if (!whyNot.isEmpty() && voidPanel.isOpen()) {
            voidPanel.close();
        }
    }

    private void askToVoid() {
        selected.with(SelectedRows.MOST_VOIDED, this::askToVoid, this::fail);
    }

    private void askToVoid(List<LogRow> some) {
        List<String> ids =
                some.stream().filter(LogRow::voidable).map(LogRow::id).toList();
        if (!isDisposed() && !ids.isEmpty()) {
            voidPanel.ask(ids);
        }
    }

    private void compare() {
        if (deeds.choosePair()) {
            keeping.compare().run();
        }
    }

    private void voidEntries(List<String> entryIds, String operator, String reason) {
        table.control().setFocus();
        for (String entryId : entryIds) {
            desk.voidEntry(entryId, operator, reason, this::fail);
        }
    }

    /** Shows an entry even when the filter hides it. */
    private void showEntry(String entryId) {
        desk.findEntry(
                entryId,
                entry -> {
                    if (entry.isPresent() && rows.place(entryId).isEmpty() && !filter.everything()) {
                        filter.clear();
                    }
                    desk.choose(entry);
                },
                this::fail);
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
