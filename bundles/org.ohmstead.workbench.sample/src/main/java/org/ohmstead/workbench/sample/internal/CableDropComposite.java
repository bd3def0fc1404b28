// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import java.util.Locale;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Says what the supply cable of the open project takes away; follows every edit. */
final class CableDropComposite extends Composite implements DeskListener {
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
                .orElse("Open a project to see what its supply cable takes away."));
        layout();
    }

    static String sentence(Project project) {
        CableDrop drop = CableDrop.of(project);
        if (drop.amps() == 0) {
            return "The amplifier lists no fuse, so the current that its cable must carry is not known."
                    + " Add the fuses on the amplifier's page.";
        }
        return String.format(
                Locale.ROOT,
                "At %.4g A the cable (%.3g m\u03a9 there and back) takes %.2f V away and gives off %.1f W."
                        + " A cable that gets warm is too thin; mind what lies beside it.",
                drop.amps(),
                drop.loopOhms() * 1000,
                drop.volts(),
                drop.watts());
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        show();
    }

    @Override
    public void projectChanged(Project before, Project after) {
        show();
    }
}
