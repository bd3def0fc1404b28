// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What is to be known before an item: readiness, precautions with their remedy, what ends it by itself, the usual cautions. */
final class BeforePane extends Composite {
    private static final Messages TEXTS = Messages.of(BeforePane.class);

    private static final int SENTENCE_WIDTH = 260;

    private final ScrolledComposite scrolled;
    private final Composite content;
    private final BiConsumer<String, Problem> askYes;
    private Optional<DryStep> shown = Optional.empty();
    private Optional<ItemRow> row = Optional.empty();
    private boolean built;

    /**
     * Makes the pane.
     *
     * @param askYes asks for a yes to a warning of a step
     */
    BeforePane(Composite parent, BiConsumer<String, Problem> askYes) {
        super(parent, SWT.NONE);
        this.askYes = askYes;
        Spacing.group(1).applyTo(this);
        scrolled = new ScrolledComposite(this, SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(scrolled);
        content = new Composite(scrolled, SWT.NONE);
        Spacing.page(3)
                .margins(Spacing.GAP, Spacing.GAP)
                .spacing(Spacing.GAP, Spacing.TIGHT)
                .applyTo(content);
        scrolled.setContent(content);
        scrolled.addListener(SWT.Resize, event -> fit());
    }

    private void fit() {
        int width = scrolled.getClientArea().width;
        scrolled.setMinSize(content.computeSize(Math.max(1, width), SWT.DEFAULT));
    }

    void refresh(RunDesk runs, Optional<ItemRow> chosen) {
        Optional<DryStep> step = chosen.flatMap(each -> runs.dryRuns().of(each.item()));
        if (built && step.equals(shown) && chosen.equals(row)) {
            return;
        }
        shown = step;
        row = chosen;
        built = true;
        for (Control child : content.getChildren()) {
            child.dispose();
        }
        fill(runs);
        content.layout(true, true);
        fit();
    }

    private void fill(RunDesk runs) {
        if (row.isEmpty()) {
            plain(TEXTS.text("before.choose"));
        } else {
            ItemRow item = row.get();
            if (!item.sentence().isEmpty()) {
                line(item.status() == ItemRow.Status.FAILED ? Severity.ERROR : Severity.NOTE, item.sentence(), "");
            }
            if (shown.isPresent()) {
                fill(shown.get(), item);
            } else if (item.open()) {
                plain(runs.dryRuns().busy() ? TEXTS.text("before.goingThrough") : RunWords.beforeChecks(runs));
            } else {
                plain(RunWords.over(item));
            }
        }
        Label cautions = plain(TEXTS.text("before.cautions"));
        cautions.setForeground(Tones.of(this).mutedText());
        Ids.name(cautions, "console.cautions");
    }

    private void fill(DryStep step, ItemRow item) {
        if (step.readiness() instanceof Readiness.NotYet notYet) {
            line(Severity.ERROR, notYet.reason(), notYet.remedy());
        } else if (step.readiness() instanceof Readiness.NotApplicable never) {
            line(Severity.ERROR, never.reason(), TEXTS.text("before.skipStep"));
        } else if (step.mayRun()) {
            Label icon = new Label(content, SWT.NONE);
            icon.setImage(Icons.image("ok"));
            GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(icon);
            Label words = Ids.name(new Label(content, SWT.WRAP), "console.ready");
            words.setText(TEXTS.text("before.nothing", item.item().stepId()));
            words.setForeground(Tones.of(this).ok());
            GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(words);
        }
        for (Severity severity : Severity.values()) {
            for (Problem problem : step.problems()) {
                if (problem.severity() == severity) {
                    problem(step, problem);
                }
            }
        }
        limits(step.stopLimits());
    }

    private void problem(DryStep step, Problem problem) {
        icon(problem.severity());
        boolean asks = step.unconfirmed().contains(problem);
        boolean confirmed = problem.severity() == Severity.WARNING && !asks;
        Label words = new Label(content, SWT.WRAP);
        words.setText(said(problem, confirmed));
        words.setForeground(
                confirmed ? Tones.of(this).mutedText() : Tones.of(this).of(problem.severity()));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .span(asks ? 1 : 2, 1)
                .applyTo(words);
        if (asks) {
            Button yes = Ids.name(
                    new Button(content, SWT.PUSH),
                    "console.confirm." + step.unconfirmed().indexOf(problem));
            yes.setText(TEXTS.text(step.unconfirmed().indexOf(problem) == 0 ? "before.sayYes" : "before.sayYesToo"));
            yes.setToolTipText(TEXTS.text("before.sayYesHint"));
            yes.addListener(SWT.Selection, event -> askYes.accept(step.item().stepId(), problem));
            GridDataFactory.swtDefaults().align(SWT.END, SWT.BEGINNING).applyTo(yes);
        }
    }

    private static String said(Problem problem, boolean confirmed) {
        String sentences = problem.what() + " " + problem.remedy();
        return confirmed ? TEXTS.text("before.confirmed", sentences) : sentences;
    }

    private void limits(List<StopLimit> limits) {
        for (StopLimit limit : limits) {
            Label icon = new Label(content, SWT.NONE);
            icon.setImage(StateIcons.stop());
            GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(icon);
            Label words = new Label(content, SWT.WRAP);
            words.setText(TEXTS.text("before.ends", LimitWords.of(limit), limit.reason()));
            GridDataFactory.fillDefaults()
                    .grab(true, false)
                    .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                    .span(2, 1)
                    .applyTo(words);
        }
    }

    private void icon(Severity severity) {
        Label icon = new Label(content, SWT.NONE);
        icon.setImage(Icons.of(severity));
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(icon);
    }

    private void line(Severity severity, String what, String remedy) {
        icon(severity);
        Label words = Ids.name(new Label(content, SWT.WRAP), "console.before.state");
        words.setText(remedy.isEmpty() ? what : what + " " + remedy);
        words.setForeground(Tones.of(this).of(severity));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .span(2, 1)
                .applyTo(words);
    }

    private Label plain(String sentence) {
        Label words = new Label(content, SWT.WRAP);
        words.setText(sentence);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .span(3, 1)
                .applyTo(words);
        return words;
    }

    @Override
    public boolean setFocus() {
        return !content.isDisposed() && (content.setFocus() || scrolled.setFocus());
    }
}
