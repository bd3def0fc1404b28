// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.ui.internal.TextTable.Cell;
import org.ohmstead.history.ui.internal.TextTable.Head;
import org.ohmstead.history.ui.internal.TextTable.Line;
import org.ohmstead.history.ui.internal.TextTable.Look;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;

/** The tabs below the control charts: what was found, the values, what operators and benches add. */
final class CheckTabs {
    private static final Messages TEXTS = Messages.of(CheckTabs.class);
    private static final int VALUE_COLUMN = 2;

    private final CTabFolder folder;
    private final IntConsumer chosen;
    private FindingsText findings;
    private TextTable values;
    private StudyPart studies;
    private Optional<CheckView> check = Optional.empty();

    /**
     * Makes the tabs, each in a turn of its own.
     *
     * @param building has its turns
     * @param chosen hears of the value whose line was chosen, counted from 0
     */
    CheckTabs(Composite parent, Slices building, IntConsumer chosen) {
        this.chosen = chosen;
        folder = Ids.name(new CTabFolder(parent, SWT.TOP | SWT.FLAT), "quality.tabs");
        building.add(() -> {
            findings = new FindingsText(folder, "quality.findings");
            tab(TEXTS.text("tab.findings"), findings.control());
            findings.show(check);
        });
        building.add(() -> {
            values = new TextTable(folder, "quality.values", heads());
            values.control().addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> valueChosen()));
            tab(TEXTS.text("tab.values"), values.control());
            showValues();
        });
        building.add(() -> {
            studies = new StudyPart(folder);
            tab(TEXTS.text("tab.studies"), studies.control());
            studies.show(check);
        });
    }

    private static List<Head> heads() {
        return List.of(
                Head.of("values.number", true, 4),
                Head.of("values.measured", false, 20),
                Head.of("values.value", true, 10),
                Head.of("values.operator", false, 12),
                Head.of("values.bench", false, 12),
                Head.of("values.entry", false, 6),
                Head.of("values.rules", false, 60));
    }

    private void tab(String title, Control control) {
        CTabItem item = new CTabItem(folder, SWT.NONE);
        item.setText(title);
        item.setControl(control);
        if (folder.getSelectionIndex() < 0) {
            folder.setSelection(0);
        }
    }

    CTabFolder control() {
        return folder;
    }

    void show(Optional<CheckView> newCheck) {
        check = newCheck;
        if (findings != null) {
            findings.show(check);
        }
        if (values != null) {
            showValues();
        }
        if (studies != null) {
            studies.show(check);
        }
    }

    /** Turns to the line of a value, counted from 0. */
    void choose(int index) {
        if (values != null
                && check.isPresent()
                && index >= 0
                && index < check.get().values().size()) {
            values.control().deselectAll();
            values.choose(Integer.toString(index));
            select(values.control());
        }
    }

    private void select(Control control) {
        for (CTabItem item : folder.getItems()) {
            if (item.getControl() == control) {
                folder.setSelection(item);
            }
        }
    }

    private void valueChosen() {
        values.chosenKey().ifPresent(key -> chosen.accept(Integer.parseInt(key)));
    }

    private void showValues() {
        String unit = check.map(each -> each.standard().unit()).orElse("");
        values.title(VALUE_COLUMN, unit.isEmpty() ? TEXTS.text("values.value") : TEXTS.text("values.value.unit", unit));
        Optional<CheckView> shown = check;
        values.show(() -> shown.map(CheckTabs::lines).orElse(List.of()));
    }

    /** The newest value comes first. */
    private static List<Line> lines(CheckView check) {
        List<Line> lines = new ArrayList<>();
        int places = Shown.places(
                check.values().stream().mapToDouble(CheckValue::value).toArray());
        for (int index = check.values().size() - 1; index >= 0; index--) {
            CheckValue value = check.values().get(index);
            String rules = check.rules().get(index);
            Look look = rules.isEmpty() ? Look.PLAIN : check.outside(index) ? Look.ERROR : Look.WARNING;
            String uncertainty = value.standardUncertainty().isEmpty()
                    ? ""
                    : Shown.stated(value.value(), value.standardUncertainty().getAsDouble())
                                    .text() + check.unitSuffix() + " (" + Coverage.wordsWithShare() + ")";
            lines.add(new Line(
                    Integer.toString(index),
                    List.of(
                            Cell.of(Integer.toString(index + 1)),
                            Cell.of(Shown.minute(value.takenAt())),
                            Cell.of(Shown.fixed(value.value(), places), uncertainty),
                            Cell.of(value.operator()),
                            Cell.of(value.bench()),
                            new Cell(value.entryId(), "", Look.MUTED, false),
                            new Cell(rules, rules, look, !rules.isEmpty()))));
        }
        return lines;
    }
}
