// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.units.text.Messages;

/** A tab that holds one table. */
final class TablePart implements StudyPart {
    private static final Messages TEXTS = Messages.of(TablePart.class);

    private static final int PAUSE_MILLISECONDS = 150;

    private final String title;
    private final SheetTable table;
    private final Function<InView, Supplier<Sheet>> maker;
    private InView shown = InView.NOTHING;

    /**
     * Makes the tab.
     *
     * @param title what stands on it
     * @param id of the table
     * @param maker what the table shows of what is in view
     */
    TablePart(Composite parent, String title, String id, Function<InView, Supplier<Sheet>> maker) {
        this.title = title;
        this.maker = maker;
        table = new SheetTable(parent, id);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public Control control() {
        return table.control();
    }

    @Override
    public void show(InView view) {
        shown = view;
        table.show(maker.apply(view));
    }

    /** Returns the table of the values that a study found. */
    static TablePart parameters(Composite parent) {
        return new TablePart(
                parent,
                TEXTS.text("parameters.title"),
                "power.parameters",
                view -> () -> view.study()
                        .flatMap(joint -> joint.study().map(study -> StudySheets.parameters(study, joint.confidence())))
                        .orElse(Sheet.EMPTY));
    }

    /** Returns the table of differences; those from what is laid over are stated where the line stands. */
    static TablePart differences(Composite parent, LineVolts line) {
        TablePart part =
                new TablePart(parent, TEXTS.text("differences.title"), "power.differences", view -> view.study()
                        .map(joint -> differences(view, joint, line))
                        .orElse(() -> Sheet.EMPTY));
        Runnable again = () -> {
            if (!part.control().isDisposed()
                    && !part.shown.comparison().overlays().isEmpty()) {
                part.show(part.shown);
            }
        };
        // While the line is dragged, the figures wait until it rests.
        line.listen(volts -> parent.getDisplay().timerExec(PAUSE_MILLISECONDS, again));
        return part;
    }

    private static Supplier<Sheet> differences(InView view, JointStudy joint, LineVolts line) {
        List<Difference> found = new ArrayList<>();
        joint.study()
                .ifPresent(study -> found.addAll(view.comparison()
                        .differences(
                                study,
                                view.group().orElseThrow(),
                                line.value().orElse(Difference.supplyVolts(study)),
                                joint.confidence())));
        found.addAll(joint.differences());
        return () -> StudySheets.differences(found, joint.confidence());
    }
}
