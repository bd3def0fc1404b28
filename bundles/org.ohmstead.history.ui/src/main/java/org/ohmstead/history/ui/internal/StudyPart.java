// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.history.ui.internal.TextTable.Cell;
import org.ohmstead.history.ui.internal.TextTable.Head;
import org.ohmstead.history.ui.internal.TextTable.Line;
import org.ohmstead.history.ui.internal.TextTable.Look;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** What operators and benches add to the scatter of a check standard: a table, with what it means above it. */
final class StudyPart {
    private static final int MEAN = 3;
    private static final int DEVIATION = 4;
    private static final String NOTHING =
            "Nothing can be said of operators or benches yet. It needs values by at least two operators, or from at"
                    + " least two benches, and more than one by some of them; so write with each value who measured it.";

    private final Composite area;
    private final StyledText sentences;
    private final TextTable table;

    StudyPart(Composite parent) {
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        sentences = Ids.name(
                new StyledText(area, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI | SWT.V_SCROLL), "quality.study.sentence");
        sentences.setMargins(Spacing.GAP, Spacing.TIGHT, Spacing.GAP, Spacing.TIGHT);
        sentences.setAlwaysShowScrollBars(false);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .hint(200, 3 * sentences.getLineHeight())
                .applyTo(sentences);
        table = new TextTable(
                area,
                "quality.study",
                List.of(
                        new Head("Study", false, 11, "What is told apart."),
                        new Head("Who or where", false, 18, "The operator or the bench."),
                        new Head("Values", true, 7, "How many values there are."),
                        new Head("Mean", true, 11, "Mean of the values."),
                        new Head("Deviation", true, 14, "How far the values scatter.")));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.control());
    }

    Composite control() {
        return area;
    }

    void show(Optional<CheckView> check) {
        List<StudyView> studies = check.map(CheckView::studies).orElse(List.of());
        StringBuilder words = new StringBuilder();
        for (StudyView study : studies) {
            words.append(study.title())
                    .append(": ")
                    .append(Numbers.inSentence(String.join(" ", study.sentences())))
                    .append('\n');
        }
        sentences.setText(
                check.isEmpty()
                        ? ""
                        : studies.isEmpty() ? NOTHING : words.toString().stripTrailing());
        String unit = check.map(each -> each.standard().unit()).orElse("");
        String suffix = unit.isEmpty() ? "" : " (" + unit + ")";
        table.title(MEAN, "Mean" + suffix);
        table.title(DEVIATION, "Deviation" + suffix);
        table.show(() -> lines(studies));
        boolean any = studies.stream().anyMatch(study -> !study.groups().isEmpty());
        table.control().setVisible(any);
    }

    private static List<Line> lines(List<StudyView> studies) {
        List<Line> lines = new ArrayList<>();
        for (StudyView study : studies) {
            for (StudyView.GroupRow group : study.groups()) {
                lines.add(new Line(
                        study.title() + "/" + group.name(),
                        List.of(
                                new Cell(study.title(), "", Look.MUTED, false),
                                Cell.of(group.name().isEmpty() ? "(not written)" : group.name()),
                                Cell.of(Integer.toString(group.count())),
                                Cell.of(Shown.value(group.mean())),
                                Cell.of(group.count() > 1 ? Shown.deviation(group.deviation()) : "\u2013"))));
            }
        }
        return lines;
    }
}
