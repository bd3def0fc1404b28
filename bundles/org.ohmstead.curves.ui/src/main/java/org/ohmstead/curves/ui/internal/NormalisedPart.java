// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** The power of each load at supply volts that the user can choose. */
final class NormalisedPart implements StudyPart {
    private static final Messages TEXTS = Messages.of(NormalisedPart.class);

    private static final int FIELD_WIDTH = 260;

    private final Composite pane;
    private final Text field;
    private final MessageLine message;
    private final SheetTable table;
    private List<Double> supplyVolts = CurveSheet.CUSTOMARY_VOLTS;
    private InView view = InView.NOTHING;

    NormalisedPart(Composite parent) {
        pane = new Composite(parent, SWT.NONE);
        Spacing.tight(1).margins(0, Spacing.TIGHT).applyTo(pane);
        Composite bar = new Composite(pane, SWT.NONE);
        Spacing.group(3).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        Label label = new Label(bar, SWT.NONE);
        label.setText(TEXTS.text("normalised.volts"));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(label);
        field = Ids.name(new Text(bar, SWT.BORDER | SWT.SINGLE), "power.normalised.volts");
        field.setToolTipText(TEXTS.text("normalised.hint", Integer.toString(SupplyList.MOST)));
        GridDataFactory.fillDefaults()
                .hint(FIELD_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(field);
        field.addListener(SWT.DefaultSelection, event -> commit());
        field.addListener(SWT.FocusOut, event -> commit());
        message = new MessageLine(bar, "power.normalised.message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
        table = new SheetTable(pane, "power.normalised");
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.control());
        write();
    }

    @Override
    public String title() {
        return TEXTS.text("normalised.title");
    }

    @Override
    public Control control() {
        return pane;
    }

    @Override
    public void show(InView newView) {
        view = newView;
        if (!field.isFocusControl()) {
            write();
        }
        fill();
    }

    private void write() {
        field.setText(SupplyList.write(supplyVolts));
    }

    private void commit() {
        Optional<List<Double>> read = SupplyList.read(field.getText());
        if (read.isEmpty()) {
            message.show(Severity.ERROR, TEXTS.text("normalised.fault", Integer.toString(SupplyList.MOST)));
            return;
        }
        message.clear();
        if (!read.get().equals(supplyVolts)) {
            supplyVolts = read.get();
            fill();
        }
    }

    private void fill() {
        List<Double> columns = supplyVolts;
        InView shown = view;
        table.show(() -> shown.study()
                .flatMap(
                        joint -> joint.study().map(study -> StudySheets.normalised(study, columns, joint.confidence())))
                .orElse(Sheet.EMPTY));
    }

    /** Voltages in one text. */
    static final class SupplyList {
        static final int MOST = 8;

        private SupplyList() {}

        static String write(List<Double> supplyVolts) {
            List<String> texts = new ArrayList<>();
            supplyVolts.forEach(each -> texts.add(Figures.volts(each)));
            return String.join("  ", texts);
        }

        /** Reads numbers with a decimal point or comma between blanks, semicolons, or commas with a blank behind. */
        static Optional<List<Double>> read(String text) {
            List<Double> supplyVolts = new ArrayList<>();
            for (String each :
                    text.toLowerCase(Locale.ROOT).replace("v", " ").strip().split("[;\\s]+|,\\s+")) {
                Optional<Double> number =
                        Figures.read(each.endsWith(",") ? each.substring(0, each.length() - 1) : each);
                if (number.isEmpty() || supplyVolts.size() == MOST) {
                    return Optional.empty();
                }
                supplyVolts.add(number.get());
            }
            return Optional.of(List.copyOf(supplyVolts));
        }
    }
}
