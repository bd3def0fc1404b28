// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.table.CopiedTable;

/**
 * The audit page: what keeps the log honest, in plain words, what a check found, which chains it holds and where they joined, the heads
 * to note down, archives, captures, and the shared log.
 */
public final class AuditComposite extends Composite {
    private static final String[] HEADERS = {"Chain", "Entries", "Joined by", "Head"};
    private static final int[] WIDTHS = {150, 70, 260, 420};
    private static final int ENTRIES = 1;

    private final ProjectDesk desk;
    private final LogSearch search;
    private final CaptureAudit captureAudit;
    private final Clock clock;
    private final AuditPage page;
    private final Slices building;
    private AuditCheck check;
    private Label example;
    private ChainDrawing drawing;
    private Label chains;
    private Table table;
    private Button copyHeads;
    private Label archives;
    private Button checkCaptures;
    private Label captures;
    private Label shared;
    private AuditFacts facts = AuditFacts.NOTHING;
    private boolean complete;
    private long asked;

    /** Makes the page, whose parts come in the next turns of the event loop. */
    public AuditComposite(Composite parent, ProjectDesk desk) {
        this(parent, desk, LogSearch.of(desk), new ProjectCaptures(), Clock.systemUTC());
    }

    AuditComposite(Composite parent, ProjectDesk desk, LogSearch search, CaptureAudit captureAudit, Clock clock) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.search = search;
        this.captureAudit = captureAudit;
        this.clock = clock;
        setLayout(new FillLayout());
        page = new AuditPage(this);
        building = new Slices(this);
        building.add(this::makeCheck);
        building.add(this::makeChainWords);
        building.add(this::makeFaultWords);
        building.add(this::makeChains);
        building.add(this::makeArchives);
        building.add(this::makeShared);
        building.add(this::start);
    }

    private void makeCheck() {
        page.heading("Was anything changed?");
        check = new AuditCheck(page, desk);
    }

    private void makeChainWords() {
        page.heading("What keeps the log honest");
        page.paragraph("audit.chain", AuditTexts.CHAIN);
        example = page.paragraph("audit.example", "");
        page.paragraph("audit.limits", AuditTexts.LIMITS);
    }

    private void makeFaultWords() {
        page.heading("What a fault would look like");
        page.list(AuditTexts.FAULTS);
    }

    private void makeChains() {
        page.heading("Chains, where they joined, and heads to note down");
        chains = page.paragraph("audit.chains", "");
        drawing = new ChainDrawing(page.content());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(drawing);
        table = Ids.name(new Table(page.content(), SWT.FULL_SELECTION | SWT.BORDER | SWT.MULTI), "audit.heads");
        table.setHeaderVisible(true);
        for (int index = 0; index < HEADERS.length; index++) {
            TableColumn column = new TableColumn(table, index == ENTRIES ? SWT.RIGHT : SWT.LEFT);
            column.setText(HEADERS[index]);
            column.setWidth(WIDTHS[index]);
        }
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(table);
        page.paragraph("audit.note", AuditTexts.HEADS);
        copyHeads = AuditPage.button(page.row(1), "&Copy heads", "audit.copy");
        copyHeads.setToolTipText("Copies the head of each chain with today's date.");
        GridDataFactory.swtDefaults().applyTo(copyHeads);
        copyHeads.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                CopiedTable.toClipboard(getDisplay(), AuditTexts.headsToNote(facts, Figures.minute(clock.instant())))));
        page.paragraph("audit.witness", AuditTexts.WITNESS);
    }

    private void makeArchives() {
        page.heading("Archives");
        archives = page.paragraph("audit.archives", "");
        page.heading("Captures");
        checkCaptures = AuditPage.button(page.row(1), "C&heck all captures", "audit.captures.check");
        GridDataFactory.swtDefaults().applyTo(checkCaptures);
        checkCaptures.setToolTipText(
                "Works out the hash of every recorded wave and compares it with what the log says.");
        checkCaptures.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> checkCaptures()));
        captures = page.paragraph("audit.captures", "");
    }

    private void makeShared() {
        page.heading("Shared log");
        shared = page.paragraph("audit.shared", "");
    }

    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        Registration following = search.listen(this::read);
        addDisposeListener(event -> {
            listening.close();
            following.close();
        });
        turn();
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            turn();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            showShared();
        }

        @Override
        public void sharingChanged(SharingState state) {
            showShared();
        }

        @Override
        public void logChanged(LogSnapshot log) {
            check.clear();
            page.measure();
        }
    }

    private void turn() {
        check.clear();
        captures.setText("Not checked yet.");
        checkCaptures.setEnabled(desk.session().isPresent());
        show(AuditFacts.NOTHING);
        read();
    }

    /** Reads anew what the log says of itself, once the index knows all of it. */
    private void read() {
        if (!complete || isDisposed() || search.catchingUp() || desk.session().isEmpty()) {
            return;
        }
        asked++;
        long mine = asked;
        Path logFile = desk.session().get().logFile();
        search.ask(
                "Reading the chains of the test log",
                finder -> AuditReading.read(logFile, finder),
                read -> {
                    if (mine == asked && !isDisposed()) {
                        show(read.orElse(AuditFacts.NOTHING));
                    }
                },
                failure -> {
                    if (!isDisposed()) {
                        chains.setText(String.valueOf(failure.getMessage()).replace("&", "&&"));
                        page.measure();
                    }
                });
    }

    private void show(AuditFacts wanted) {
        facts = wanted;
        boolean there = wanted.own().isPresent();
        example.setText(AuditTexts.example(wanted));
        chains.setText(there ? AuditTexts.chainsSentence(wanted) : "There is no log yet.");
        drawing.show(wanted);
        AuditPage.show(drawing, there);
        List<List<String>> rows = AuditTexts.chainRows(wanted);
        table.setItemCount(rows.size());
        for (int index = 0; index < rows.size(); index++) {
            TableItem item = table.getItem(index);
            item.setText(rows.get(index).toArray(new String[0]));
        }
        AuditPage.show(table, there);
        copyHeads.setEnabled(there);
        archives.setText(AuditTexts.archives(wanted).replace("&", "&&"));
        showShared();
    }

    private void showShared() {
        shared.setText(AuditTexts.shared(
                        desk.session().flatMap(session -> session.project().sharedLog()),
                        desk.sharing().sentence())
                .replace("&", "&&"));
        page.recolour();
        page.measure();
    }

    private void checkCaptures() {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            return;
        }
        checkCaptures.setEnabled(false);
        say("Working out the hash of every capture\u2026", Tones.of(captures).mutedText());
        desk.work()
                .start(
                        "Checking the captures",
                        progress -> captureAudit.check(
                                session.get().folder(), session.get().logFile(), progress),
                        result -> checked(session, result.sentence() + lines(result.troubles()), result.whole()),
                        failure -> checked(session, String.valueOf(failure.getMessage()), false));
    }

    private static String lines(List<String> troubles) {
        return troubles.isEmpty() ? "" : "\n" + String.join("\n", troubles);
    }

    private void checked(Optional<ProjectSession> session, String words, boolean whole) {
        if (!isDisposed() && desk.session().equals(session)) {
            checkCaptures.setEnabled(true);
            Tones tones = Tones.of(captures);
            say(words, whole ? tones.ok() : tones.error());
        }
    }

    private void say(String words, Color tone) {
        captures.setText(words.replace("&", "&&"));
        captures.setForeground(tone);
        page.measure();
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && page.control().setFocus();
    }
}
