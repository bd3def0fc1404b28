// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.table.CopiedTable;

/** The line below the table: what there is to do with entries, whether the log is whole, and its head. */
final class ChainBar {
    private static final Messages TEXTS = Messages.of(ChainBar.class);
    private static final int SENTENCE_WIDTH = 160;
    private static final int LEAST_WITH_HEAD = 560;

    private final ProjectDesk desk;
    private final Composite bar;
    private final Button voids;
    private final Button compare;
    private final Button verify;
    private final Label result;
    private final Label head;
    private final Button copyHead;
    private final Composite trouble;
    private final Label faults;
    private final Button showFault;
    private Optional<VerifyFault> first = Optional.empty();
    private Optional<ProjectSession> asked = Optional.empty();
    private String headHash = "";

    ChainBar(
            Composite parent,
            ProjectDesk desk,
            Runnable voidSelected,
            Runnable compareSelected,
            Consumer<String> showEntry) {
        this.desk = desk;
        trouble = new Composite(parent, SWT.NONE);
        Spacing.group(2).applyTo(trouble);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(trouble);
        faults = Ids.name(new Label(trouble, SWT.WRAP), "log.verify.fault");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(faults);
        showFault = Ids.name(new Button(trouble, SWT.PUSH), "log.verify.show");
        showFault.setText(TEXTS.text("chain.show"));
        showFault.addSelectionListener(SelectionListener.widgetSelectedAdapter(
                event -> first.map(VerifyFault::entryId).ifPresent(showEntry)));

        bar = new Composite(parent, SWT.NONE);
        Spacing.group(6).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        voids = button(TEXTS.text("chain.void"), "log.void");
        voids.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> voidSelected.run()));
        compare = button(TEXTS.text("chain.compare"), "log.compare");
        compare.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> compareSelected.run()));
        allowCompare(false);
        verify = button(TEXTS.text("chain.verify"), "log.verify");
        verify.setToolTipText(TEXTS.text("chain.verify.hint"));
        verify.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> verify()));
        result = Ids.name(new Label(bar, SWT.WRAP), "log.verify.result");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(result);
        head = Ids.name(new Label(bar, SWT.NONE), "log.head");
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(head);
        bar.addListener(SWT.Resize, event -> makeRoom());
        copyHead = button(TEXTS.text("chain.copyHead"), "log.head.copy");
        copyHead.setToolTipText(TEXTS.text("chain.copyHead.hint"));
        copyHead.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copyHead()));
    }

    private Button button(String words, String id) {
        Button button = Ids.name(new Button(bar, SWT.PUSH), id);
        button.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
        return button;
    }

    /** Where there is little room, the head is only copied, not shown. */
    private void makeRoom() {
        boolean shown = bar.getSize().x >= LEAST_WITH_HEAD;
        GridData data = (GridData) head.getLayoutData();
        if (data.exclude == shown) {
            data.exclude = !shown;
            head.setVisible(shown);
            bar.requestLayout();
        }
    }

    /** Shows what the last reading of the log says; what a check found before is then out of date. */
    void show(LogSnapshot log) {
        headHash = log.headHash();
        head.setText(headHash.isEmpty() ? "" : TEXTS.text("chain.head", Figures.shortHash(headHash)));
        head.requestLayout();
        head.setToolTipText(headHash.isEmpty() ? null : TEXTS.text("chain.head.hint", headHash));
        head.setForeground(Tones.of(bar).mutedText());
        copyHead.setEnabled(!headHash.isEmpty());
        boolean there = log.state() == LogState.WHOLE || log.state() == LogState.BROKEN;
        verify.setEnabled(desk.session().isPresent() && (there || log.state() == LogState.UNREADABLE));
        Tones tones = Tones.of(bar);
        boolean bad = log.state() == LogState.BROKEN || log.state() == LogState.UNREADABLE;
        say(log.state() == LogState.NONE ? "" : capital(log.sentence()), bad ? tones.error() : tones.mutedText());
        showTrouble("", Optional.empty());
    }

    /** Says why nothing can be voided, or allows it when the sentence is empty. */
    void allowVoid(String whyNot) {
        voids.setEnabled(whyNot.isEmpty());
        voids.setToolTipText(whyNot.isEmpty() ? TEXTS.text("chain.void.hint") : whyNot);
    }

    /** Allows to compare, which needs two readings. */
    void allowCompare(boolean two) {
        compare.setEnabled(two);
        compare.setToolTipText(TEXTS.text(two ? "chain.compare.hint" : "chain.compare.two"));
    }

    /** Shows what went wrong. */
    void fail(Exception failure) {
        String sentence = failure.getMessage() == null ? failure.toString() : failure.getMessage();
        say(sentence, Tones.of(bar).error());
    }

    private void verify() {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            return;
        }
        asked = session;
        verify.setEnabled(false);
        say(TEXTS.text("chain.verifying"), Tones.of(bar).mutedText());
        showTrouble("", Optional.empty());
        Path file = session.get().logFile();
        desk.work()
                .start(
                        TEXTS.text("chain.job"),
                        progress -> {
                            try (TestLog log = TestLog.openReadOnly(file)) {
                                return log.verify();
                            }
                        },
                        report -> answer(session, () -> show(report)),
                        failure -> answer(session, () -> fail(failure)));
    }

    /** What was asked of a project that is no longer open is of no interest. */
    private void answer(Optional<ProjectSession> session, Runnable show) {
        if (!bar.isDisposed() && asked.equals(session) && desk.session().equals(session)) {
            verify.setEnabled(true);
            show.run();
        }
    }

    private void show(VerifyReport report) {
        Tones tones = Tones.of(bar);
        say(Verdicts.headline(report), report.intact() ? tones.ok() : tones.error());
        showTrouble(Verdicts.faults(report), report.faults().stream().findFirst());
    }

    private void showTrouble(String lines, Optional<VerifyFault> fault) {
        first = fault;
        faults.setText(lines.replace("&", "&&"));
        faults.setForeground(Tones.of(bar).error());
        boolean named = fault.map(each -> !each.entryId().isEmpty()).orElse(false);
        showFault.setVisible(named);
        trouble.setVisible(!lines.isEmpty());
        ((GridData) trouble.getLayoutData()).exclude = lines.isEmpty();
        faults.requestLayout();
        showFault.requestLayout();
        trouble.requestLayout();
    }

    private void say(String sentence, Color tone) {
        result.setText(sentence.replace("&", "&&"));
        result.setToolTipText(sentence.isEmpty() ? null : sentence);
        result.setForeground(tone);
        result.requestLayout();
    }

    private void copyHead() {
        CopiedTable.toClipboard(bar.getDisplay(), headHash);
    }

    private static String capital(String sentence) {
        String trimmed = sentence.strip();
        return trimmed.isEmpty()
                ? ""
                : Character.toUpperCase(trimmed.charAt(0)) + trimmed.substring(1) + (trimmed.endsWith(".") ? "" : ".");
    }
}
