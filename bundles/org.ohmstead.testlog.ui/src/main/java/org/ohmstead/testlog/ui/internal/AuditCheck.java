// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** The part of the audit page that checks the whole log, perhaps for a head that was noted elsewhere, and names the first bad entry. */
final class AuditCheck {
    private static final Messages TEXTS = Messages.of(AuditCheck.class);
    private final ProjectDesk desk;
    private final AuditPage page;
    private final Button verify;
    private final Text head;
    private final Label result;
    private final Label faults;
    private final Label clock;
    private final Button show;
    private Optional<ProjectSession> asked = Optional.empty();
    private Optional<VerifyFault> first = Optional.empty();

    AuditCheck(AuditPage page, ProjectDesk desk) {
        this.desk = desk;
        this.page = page;
        Composite row = page.row(2);
        verify = AuditPage.button(row, TEXTS.text("audit.verify"), "audit.verify");
        verify.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> verify()));
        head = Ids.name(new Text(row, SWT.BORDER | SWT.SINGLE), "audit.expected");
        head.setMessage(TEXTS.text("audit.expected"));
        head.setToolTipText(TEXTS.text("audit.expected.hint"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(head);
        head.addListener(SWT.DefaultSelection, event -> verify());
        result = page.paragraph("audit.result", "");
        faults = page.paragraph("audit.faults", "");
        clock = page.paragraph("audit.clock", "");
        show = AuditPage.button(page.content(), TEXTS.text("audit.show"), "audit.show");
        GridDataFactory.swtDefaults().applyTo(show);
        show.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> showFirst()));
        clear();
    }

    /** Forgets what was found, since the log has changed. */
    void clear() {
        boolean there = desk.session().isPresent();
        verify.setEnabled(there);
        say(
                there ? TEXTS.text("audit.unchecked", desk.log().sentence()) : TEXTS.text("audit.noProject"),
                Tones.of(result).mutedText());
        tell("", Optional.empty());
    }

    private void verify() {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty() || !verify.isEnabled()) {
            return;
        }
        asked = session;
        verify.setEnabled(false);
        say(TEXTS.text("audit.working"), Tones.of(result).mutedText());
        tell("", Optional.empty());
        Path file = session.get().logFile();
        String wanted = head.getText().strip();
        Optional<String> expected = wanted.isEmpty() ? Optional.empty() : Optional.of(wanted);
        desk.work()
                .start(
                        TEXTS.text("chain.job"),
                        progress -> {
                            try (TestLog log = TestLog.openReadOnly(file)) {
                                return log.verify(expected);
                            }
                        },
                        report -> answer(session, () -> show(report, expected.isPresent())),
                        failure -> answer(session, () -> {
                            say(
                                    String.valueOf(failure.getMessage()),
                                    Tones.of(result).error());
                            page.measure();
                        }));
    }

    private void answer(Optional<ProjectSession> session, Runnable action) {
        if (!result.isDisposed() && asked.equals(session) && desk.session().equals(session)) {
            verify.setEnabled(true);
            action.run();
        }
    }

    private void show(VerifyReport report, boolean headAsked) {
        Tones tones = Tones.of(result);
        String headline = Verdicts.headline(report);
        say(
                headAsked && report.intact() ? TEXTS.text("audit.holdsHead", headline) : headline,
                report.intact() ? tones.ok() : tones.error());
        tell(Verdicts.faults(report), report.faults().stream().findFirst());
        tellOfClock(Verdicts.clock(report));
        page.measure();
    }

    private void say(String sentence, Color tone) {
        result.setText(sentence.replace("&", "&&"));
        result.setForeground(tone);
    }

    private void tellOfClock(String lines) {
        clock.setText(lines.replace("&", "&&"));
        AuditPage.show(clock, !lines.isEmpty());
    }

    private void tell(String lines, Optional<VerifyFault> fault) {
        tellOfClock("");
        first = fault;
        faults.setText(lines.replace("&", "&&"));
        faults.setForeground(Tones.of(faults).error());
        AuditPage.show(faults, !lines.isEmpty());
        AuditPage.show(show, !lines.isEmpty());
        show.setEnabled(fault.filter(each -> !each.entryId().isEmpty()).isPresent());
    }

    private void showFirst() {
        first.map(VerifyFault::entryId)
                .ifPresent(id -> desk.findEntry(
                        id,
                        desk::choose,
                        failure -> say(
                                String.valueOf(failure.getMessage()),
                                Tones.of(result).error())));
    }
}
