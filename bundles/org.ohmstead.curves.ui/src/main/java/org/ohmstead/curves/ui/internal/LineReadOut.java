// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** What every load gives at the supply volts of the chart's line. */
final class LineReadOut {
    private static final Messages TEXTS = Messages.of(LineReadOut.class);

    private static final int FIELD_WIDTH = 60;

    private final Composite pane;
    private final LineVolts line;
    private final Text field;
    private final SheetTable table;
    private Optional<JointStudy> joint = Optional.empty();

    LineReadOut(Composite parent, LineVolts line) {
        this.line = line;
        pane = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(pane);
        Composite bar = new Composite(pane, SWT.NONE);
        Spacing.tight(3).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        label(bar, TEXTS.text("line.at"));
        field = Ids.name(new Text(bar, SWT.BORDER | SWT.SINGLE | SWT.RIGHT), "power.line.volts");
        field.setToolTipText(TEXTS.text("line.hint"));
        GridDataFactory.fillDefaults()
                .hint(FIELD_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(field);
        field.addListener(SWT.DefaultSelection, event -> commit());
        field.addListener(SWT.FocusOut, event -> commit());
        label(bar, "V");
        table = new SheetTable(pane, "power.line");
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.control());
        line.listen(volts -> refresh());
    }

    Composite control() {
        return pane;
    }

    private static void label(Composite bar, String words) {
        Label label = new Label(bar, SWT.NONE);
        label.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(label);
    }

    private void commit() {
        Figures.read(field.getText()).ifPresent(line::set);
        write();
    }

    private void write() {
        String text = line.value().isPresent() ? Figures.fixed(line.value().getAsDouble(), 2) : "";
        if (!text.equals(field.getText())) {
            field.setText(text);
        }
    }

    void show(Optional<JointStudy> newJoint) {
        joint = newJoint;
        field.setEnabled(joint.flatMap(JointStudy::study).isPresent());
        refresh();
    }

    /** Writes the figures anew. */
    void refresh() {
        write();
        OptionalDouble volts = line.value();
        Optional<JointStudy> shown = joint;
        table.show(() -> sheet(shown, volts));
    }

    private static Sheet sheet(Optional<JointStudy> joint, OptionalDouble volts) {
        Optional<PowerStudy> study = joint.flatMap(JointStudy::study);
        return study.isPresent() && volts.isPresent()
                ? StudySheets.readOut(
                        study.get(), volts.getAsDouble(), joint.get().confidence())
                : Sheet.EMPTY;
    }
}
