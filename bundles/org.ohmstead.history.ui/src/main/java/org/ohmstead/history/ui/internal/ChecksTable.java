// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.ui.internal.TextTable.Cell;
import org.ohmstead.history.ui.internal.TextTable.Head;
import org.ohmstead.history.ui.internal.TextTable.Line;
import org.ohmstead.history.ui.internal.TextTable.Look;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;

/** The check standards of the project with how they stand. */
final class ChecksTable {
    private static final Messages TEXTS = Messages.of(ChecksTable.class);

    private final TextTable table;
    private List<CheckView> checks = List.of();

    ChecksTable(Composite parent, Consumer<Optional<CheckView>> chosen) {
        table = new TextTable(
                parent,
                "quality.checks",
                List.of(
                        Head.of("checks.name", false, 28),
                        Head.of("checks.state", false, 19),
                        Head.of("checks.newest", true, 11),
                        Head.of("checks.measured", false, 24),
                        Head.of("checks.values", true, 6)));
        table.control()
                .addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chosen.accept(this.chosen())));
    }

    Table control() {
        return table.control();
    }

    /** Shows other check standards; the chosen one stays chosen when it is still there, else the most serious is. */
    void show(List<CheckView> newChecks) {
        checks = List.copyOf(newChecks);
        List<CheckView> shown = checks;
        table.show(() -> shown.stream().map(ChecksTable::line).toList());
        if (chosen().isEmpty()) {
            worst().ifPresent(check -> table.choose(check.standard().id()));
        }
    }

    private Optional<CheckView> worst() {
        for (Standing standing : List.of(Standing.STOP, Standing.LOOK)) {
            Optional<CheckView> found =
                    checks.stream().filter(each -> each.standing() == standing).findFirst();
            if (found.isPresent()) {
                return found;
            }
        }
        return checks.stream().findFirst();
    }

    /** Returns the chosen check standard, or empty. */
    Optional<CheckView> chosen() {
        return table.chosenKey().flatMap(id -> checks.stream()
                .filter(each -> each.standard().id().equals(id))
                .findFirst());
    }

    private static Line line(CheckView check) {
        Optional<CheckValue> newest = check.values().isEmpty()
                ? Optional.empty()
                : Optional.of(check.values().get(check.values().size() - 1));
        Cell measured = newest.isEmpty()
                ? new Cell(TEXTS.text("checks.never"), check.reminder(), Look.MUTED, false)
                : new Cell(
                        Shown.minute(newest.get().takenAt()),
                        check.reminder(),
                        check.reminder().isEmpty() ? Look.PLAIN : Look.WARNING,
                        !check.reminder().isEmpty());
        return new Line(
                check.standard().id(),
                List.of(
                        Cell.of(check.standard().name(), Shown.sentence(check.sentence())),
                        new Cell(
                                check.standing().words(),
                                Shown.sentence(check.sentence()),
                                check.standing().look(),
                                true),
                        Cell.of(
                                newest.map(value -> Shown.value(value.value()) + check.unitSuffix())
                                        .orElse(""),
                                newest.map(value -> hover(check, value)).orElse("")),
                        measured,
                        Cell.of(Integer.toString(check.values().size()))));
    }

    private static String hover(CheckView check, CheckValue value) {
        return value.standardUncertainty().isEmpty()
                ? ""
                : Shown.stated(value.value(), value.standardUncertainty().getAsDouble())
                                .text() + check.unitSuffix() + " ("
                        + Coverage.wordsWithShare() + ")";
    }
}
