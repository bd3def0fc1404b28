// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.engine.DryRun;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The whole plan gone through without feeding anything: for each item what would be in its way, what needs a yes, what would end it. */
final class DryRunPane extends Composite {
    private static final Messages TEXTS = Messages.of(DryRunPane.class);

    private static final int SENTENCE_WIDTH = 260;
    private static final int STEP_WIDTH = 190;
    private static final int KIND_WIDTH = 110;
    private static final int SAYS_WIDTH = 620;

    private final Label summary;
    private final Table table;
    private Optional<DryRun> shown = Optional.empty();
    private String shownSentence = "";

    /** A line of the table. */
    private record Line(String step, Image image, String kind, String says, Optional<Severity> severity) {}

    DryRunPane(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.group(1).margins(0, Spacing.TIGHT).applyTo(this);
        summary = Ids.name(new Label(this, SWT.WRAP), "console.dry.summary");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(summary);
        table = Ids.name(new Table(this, SWT.FULL_SELECTION | SWT.BORDER | SWT.VIRTUAL), "console.dry.table");
        table.setHeaderVisible(true);
        column(TEXTS.text("dry.step"), STEP_WIDTH);
        column(TEXTS.text("dry.what"), KIND_WIDTH);
        column(TEXTS.text("dry.says"), SAYS_WIDTH);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(table);
    }

    private void column(String words, int width) {
        TableColumn column = new TableColumn(table, SWT.LEFT);
        column.setText(words);
        column.setWidth(width);
    }

    void refresh(RunDesk runs) {
        double stepSeconds = runs.project()
                .map(project -> project.heat().pacing().stepSeconds())
                .orElse(Pacing.USUAL.stepSeconds());
        String sentence = runs.dryRuns()
                .found()
                .map(found -> RunWords.dryRun(found, stepSeconds))
                .orElse(runs.dryRuns().busy() ? TEXTS.text("before.goingThrough") : RunWords.beforeChecks(runs));
        if (!sentence.equals(shownSentence)) {
            shownSentence = sentence;
            summary.setText(sentence);
            summary.requestLayout();
        }
        if (runs.dryRuns().found().equals(shown)) {
            return;
        }
        shown = runs.dryRuns().found();
        List<Line> lines = new ArrayList<>();
        shown.ifPresent(found -> found.steps().forEach(step -> lines.addAll(lines(step))));
        fill(lines);
    }

    private void fill(List<Line> lines) {
        Tones tones = Tones.of(table);
        for (Listener old : table.getListeners(SWT.SetData)) {
            table.removeListener(SWT.SetData, old);
        }
        table.setItemCount(0);
        table.addListener(SWT.SetData, event -> {
            Line line = lines.get(event.index);
            TableItem item = (TableItem) event.item;
            item.setText(new String[] {line.step(), line.kind(), line.says()});
            item.setImage(1, line.image());
            line.severity().ifPresent(severity -> item.setForeground(2, tones.of(severity)));
        });
        table.setItemCount(lines.size());
        table.clearAll();
    }

    private static List<Line> lines(DryStep step) {
        List<Line> lines = new ArrayList<>();
        String name = step.item().stepId();
        if (step.readiness() instanceof Readiness.NotYet notYet) {
            lines.add(new Line(
                    name,
                    Icons.of(Severity.ERROR),
                    TEXTS.text("dry.notYet"),
                    notYet.reason() + " " + notYet.remedy(),
                    Optional.of(Severity.ERROR)));
        } else if (step.readiness() instanceof Readiness.NotApplicable never) {
            lines.add(new Line(
                    name,
                    Icons.of(Severity.ERROR),
                    TEXTS.text("dry.never"),
                    never.reason(),
                    Optional.of(Severity.ERROR)));
        }
        for (Problem problem : step.problems()) {
            String kind =
                    switch (problem.severity()) {
                        case ERROR -> TEXTS.text("dry.forbids");
                        case WARNING ->
                            step.unconfirmed().contains(problem)
                                    ? TEXTS.text("dry.needsYes")
                                    : TEXTS.text("dry.saidYes");
                        case NOTE -> TEXTS.text("dry.toKnow");
                    };
            lines.add(new Line(
                    lines.isEmpty() ? name : "",
                    Icons.of(problem.severity()),
                    kind,
                    problem.what() + " " + problem.remedy(),
                    Optional.of(problem.severity())));
        }
        if (lines.isEmpty()) {
            lines.add(new Line(
                    name, Icons.image("ok"), TEXTS.text("dry.ready"), TEXTS.text("dry.nothing"), Optional.empty()));
        }
        for (StopLimit limit : step.stopLimits()) {
            lines.add(new Line(
                    "",
                    StateIcons.stop(),
                    TEXTS.text("dry.ends"),
                    TEXTS.text("dry.limit", LimitWords.of(limit), limit.reason()),
                    Optional.empty()));
        }
        return lines;
    }

    @Override
    public boolean setFocus() {
        return !table.isDisposed() && table.setFocus();
    }
}
