// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Says what the supply cable of the open project takes away; follows every edit. */
final class CableDropComposite extends Composite implements DeskListener {
    private static final Messages TEXTS = Messages.of(CableDropComposite.class);
    private static final int TEXT_WIDTH = 200;

    private final ProjectDesk desk;
    private final Label text;

    CableDropComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        Spacing.page(1).applyTo(this);
        text = Ids.name(new Label(this, SWT.WRAP), "sample.cable");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .applyTo(text);
        Registration registration = desk.listen(this);
        addDisposeListener(event -> registration.close());
        show();
    }

    private void show() {
        text.setText(desk.session()
                .map(ProjectSession::project)
                .map(CableDropComposite::sentence)
                .orElse(TEXTS.text("view.noProject")));
        layout();
    }

    static String sentence(Project project) {
        CableDrop drop = CableDrop.of(project);
        if (drop.amps() == 0) {
            return TEXTS.text("view.noFuse");
        }
        return TEXTS.text(
                "view.drop",
                Numbers.format("%.4g", drop.amps()),
                Numbers.format("%.3g", drop.loopOhms() * 1000),
                Numbers.format("%.2f", drop.volts()),
                Numbers.format("%.1f", drop.watts()));
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        show();
    }

    @Override
    public void projectChanged(Project before, Project after) {
        show();
    }

    @Override
    public void displayChanged(DisplaySettings settings) {
        show();
    }
}
