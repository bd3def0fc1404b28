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
import org.ohmstead.units.text.Messages;
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
    private static final Messages TEXTS = Messages.of(AuditComposite.class);
    private static final List<String> HEADERS = List.of("chain", "entries", "joined", "head");
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
        page.heading(TEXTS.text("audit.changed"));
        check = new AuditCheck(page, desk);
    }

    private void makeChainWords() {
        page.heading(TEXTS.text("audit.honest"));
        page.paragraph("audit.chain", TEXTS.text("audit.chain"));
        example = page.paragraph("audit.example", "");
        page.paragraph("audit.limits", TEXTS.text("audit.limits"));
    }

    private void makeFaultWords() {
        page.heading(TEXTS.text("audit.faults"));
        page.list(AuditTexts.faults());
    }

    private void makeChains() {
        page.heading(TEXTS.text("audit.chains"));
        chains = page.paragraph("audit.chains", "");
        drawing = new ChainDrawing(page.content());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(drawing);
        table = Ids.name(new Table(page.content(), SWT.FULL_SELECTION | SWT.BORDER | SWT.MULTI), "audit.heads");
        table.setHeaderVisible(true);
        for (int index = 0; index < HEADERS.size(); index++) {
            TableColumn column = new TableColumn(table, index == ENTRIES ? SWT.RIGHT : SWT.LEFT);
            column.setText(TEXTS.text("audit.column." + HEADERS.get(index)));
        }
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(table);
        page.paragraph("audit.note", TEXTS.text("audit.heads"));
        copyHeads = AuditPage.button(page.row(1), TEXTS.text("audit.copy"), "audit.copy");
        copyHeads.setToolTipText(TEXTS.text("audit.copy.hint"));
        GridDataFactory.swtDefaults().applyTo(copyHeads);
        copyHeads.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                CopiedTable.toClipboard(getDisplay(), AuditTexts.headsToNote(facts, Figures.minute(clock.instant())))));
        page.paragraph("audit.witness", TEXTS.text("audit.witness"));
    }

    private void makeArchives() {
        page.heading(TEXTS.text("audit.archives"));
        archives = page.paragraph("audit.archives", "");
        page.heading(TEXTS.text("audit.captures"));
        checkCaptures = AuditPage.button(page.row(1), TEXTS.text("audit.captures.check"), "audit.captures.check");
        GridDataFactory.swtDefaults().applyTo(checkCaptures);
        checkCaptures.setToolTipText(TEXTS.text("audit.captures.check.hint"));
        checkCaptures.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> checkCaptures()));
        captures = page.paragraph("audit.captures", "");
    }

    private void makeShared() {
        page.heading(TEXTS.text("audit.shared"));
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
        captures.setText(TEXTS.text("audit.captures.unchecked"));
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
                TEXTS.text("audit.chains.reading"),
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
        chains.setText(there ? AuditTexts.chainsSentence(wanted) : TEXTS.text("audit.chains.none"));
        drawing.show(wanted);
        AuditPage.show(drawing, there);
        List<List<String>> rows = AuditTexts.chainRows(wanted);
        table.setItemCount(rows.size());
        for (int index = 0; index < rows.size(); index++) {
            TableItem item = table.getItem(index);
            item.setText(rows.get(index).toArray(new String[0]));
        }
        // The head is to be noted down, so it is to be read whole.
        for (TableColumn column : table.getColumns()) {
            column.pack();
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
        say(TEXTS.text("audit.captures.working"), Tones.of(captures).mutedText());
        desk.work()
                .start(
                        TEXTS.text("audit.captures.job"),
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
