// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.thermal.plan.ThermalPrecautions;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** A caution that is always there, and a list that opens: what was assumed, what is wrong with currents and data, all cautions. */
final class ForecastNotes extends Composite {
    private static final Messages TEXTS = Messages.of(ForecastNotes.class);
    private static final int LIST_HEIGHT = 120;
    private static final int LEAST_WIDTH = 200;
    private static final String BULLET = "\u2022 ";

    private final MessageLine caution;
    private final Button open;
    private final Text list;
    private int count;

    ForecastNotes(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(2).applyTo(this);
        caution = new MessageLine(this, "forecast.caution");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(caution);
        open = Ids.name(new Button(this, SWT.TOGGLE), "forecast.notes");
        open.setToolTipText(TEXTS.text("notes.hint"));
        GridDataFactory.swtDefaults().applyTo(open);
        list = Ids.name(
                new Text(this, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER),
                "forecast.notes.list");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(2, 1)
                .hint(LEAST_WIDTH, LIST_HEIGHT)
                .exclude(true)
                .applyTo(list);
        list.setVisible(false);
        open.addListener(SWT.Selection, event -> toggle());
        clear();
    }

    private void toggle() {
        GridData data = (GridData) list.getLayoutData();
        data.exclude = !open.getSelection();
        list.setVisible(open.getSelection());
        head();
        list.requestLayout();
    }

    private void head() {
        String text =
                open.getSelection() ? TEXTS.text("notes.hide") : TEXTS.text("notes.show", Integer.toString(count));
        if (!text.equals(open.getText())) {
            open.setText(text);
            open.requestLayout();
        }
    }

    /** Shows the cautions alone. */
    void clear() {
        caution.clear();
        count = 0;
        put("");
        open.setEnabled(false);
        head();
    }

    /** Shows what is to be said about a forecast. */
    void show(Forecast forecast) {
        boolean battery = forecast.project().heat().supply().battery();
        caution.show(Severity.WARNING, TEXTS.text(battery ? "notes.cautionBattery" : "notes.caution"));
        List<Problem> problems = ThermalPrecautions.of(forecast.plan(), forecast.answer());
        List<String> assumed = forecast.plan().notes();
        count = problems.size() + assumed.size();
        List<String> lines = new ArrayList<>();
        lines.addAll(problems.stream()
                .sorted((one, other) -> one.severity().compareTo(other.severity()))
                .map(problem -> TEXTS.text("notes." + problem.severity().name(), problem.what(), problem.remedy()))
                .toList());
        lines.addAll(assumed);
        lines.addAll(SupplyCautions.all().stream()
                .filter(each -> battery || !each.equals(SupplyCautions.batteries()))
                .map(each -> TEXTS.text("notes.each", each))
                .toList());
        put(lines.stream().map(each -> BULLET + each).collect(Collectors.joining("\n")));
        open.setEnabled(true);
        head();
    }

    private void put(String text) {
        String shown = Numbers.inSentence(text);
        if (!shown.equals(list.getText())) {
            list.setText(shown);
        }
    }
}
