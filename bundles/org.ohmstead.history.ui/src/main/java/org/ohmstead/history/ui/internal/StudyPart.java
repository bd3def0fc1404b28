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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** What operators and benches add to the scatter of a check standard: a table, with what it means above it. */
final class StudyPart {
    private static final Messages TEXTS = Messages.of(StudyPart.class);
    private static final int MEAN = 3;
    private static final int DEVIATION = 4;

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
                        Head.of("study.study", false, 11),
                        Head.of("study.who", false, 18),
                        Head.of("study.values", true, 7),
                        Head.of("study.mean", true, 11),
                        Head.of("study.deviation", true, 14)));
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
                        : studies.isEmpty()
                                ? TEXTS.text("study.none")
                                : words.toString().stripTrailing());
        String unit = check.map(each -> each.standard().unit()).orElse("");
        table.title(MEAN, withUnit("study.mean", unit));
        table.title(DEVIATION, withUnit("study.deviation", unit));
        table.show(() -> lines(studies));
        boolean any = studies.stream().anyMatch(study -> !study.groups().isEmpty());
        table.control().setVisible(any);
    }

    private static String withUnit(String key, String unit) {
        return unit.isEmpty() ? TEXTS.text(key) : TEXTS.text(key + ".unit", unit);
    }

    private static List<Line> lines(List<StudyView> studies) {
        List<Line> lines = new ArrayList<>();
        for (StudyView study : studies) {
            for (StudyView.GroupRow group : study.groups()) {
                lines.add(new Line(
                        study.title() + "/" + group.name(),
                        List.of(
                                new Cell(study.title(), "", Look.MUTED, false),
                                Cell.of(group.name().isEmpty() ? TEXTS.text("study.unnamed") : group.name()),
                                Cell.of(Integer.toString(group.count())),
                                Cell.of(Shown.value(group.mean())),
                                Cell.of(group.count() > 1 ? Shown.deviation(group.deviation()) : "\u2013"))));
            }
        }
        return lines;
    }
}
