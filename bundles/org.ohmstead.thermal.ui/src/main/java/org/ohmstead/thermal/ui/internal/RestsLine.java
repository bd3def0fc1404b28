// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rest;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** Tells of the rests that the user put before steps, and takes those away whose step is gone. */
final class RestsLine implements HeatBindings.Bound {
    private static final Messages TEXTS = Messages.of(RestsLine.class);

    private final Label count;
    private final Composite lost;
    private final MessageLine message;
    private final Button remove;

    RestsLine(Composite parent, FormSection form, HeatBindings bindings) {
        count = Ids.name(form.note(""), "heat.rests");
        lost = new Composite(parent, SWT.NONE);
        Spacing.group(2).applyTo(lost);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(lost);
        lost.setVisible(false);
        message = new MessageLine(lost, "heat.restsLost");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
        remove = Ids.name(new Button(lost, SWT.PUSH), "heat.restsRemove");
        remove.setText(TEXTS.text("rests.remove"));
        remove.addListener(
                SWT.Selection,
                event -> bindings.editProject(
                        TEXTS.text("rests.edit"),
                        project -> project.withHeat(project.heat()
                                .withPacing(project.heat().pacing().withRests(kept(project))))));
        bindings.add(this);
    }

    private static List<Rest> kept(Project project) {
        return project.heat().pacing().rests().stream()
                .filter(rest -> project.step(rest.stepId()).isPresent())
                .toList();
    }

    @Override
    public void show(Project project) {
        List<Rest> rests = project.heat().pacing().rests();
        count.setText(rests.isEmpty() ? TEXTS.text("rests.own.none") : HeatWords.count(rests.size(), "rests.own"));
        count.requestLayout();
        int gone = rests.size() - kept(project).size();
        ((GridData) lost.getLayoutData()).exclude = gone == 0;
        lost.setVisible(gone > 0);
        if (gone > 0) {
            message.show(Severity.WARNING, HeatWords.count(gone, "rests.gone"));
        } else {
            message.clear();
        }
        lost.requestLayout();
    }

    @Override
    public void readOnly(boolean readOnly) {
        remove.setEnabled(!readOnly);
    }

    @Override
    public boolean reveal(String where) {
        return where.startsWith("$.heat.pacing.rests") && lost.getVisible() && remove.setFocus();
    }
}
