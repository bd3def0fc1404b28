// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.menus.WorkbenchWindowControlContribution;
import org.ohmstead.app.internal.AnyChange;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskStatus;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Registration;

/** What the bottom of the window always says: the project, its log, the ambient temperature and the supply. */
public final class StatusTrim extends WorkbenchWindowControlContribution {
    private ProjectDesk desk;
    private Registration registration;
    private CLabel project;
    private CLabel log;
    private CLabel ambient;
    private CLabel supply;

    @Override
    protected Control createControl(Composite parent) {
        desk = getWorkbenchWindow().getService(ProjectDesk.class);
        Composite line = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults()
                .numColumns(4)
                .margins(Spacing.GAP, 2)
                .spacing(Spacing.MARGIN, 0)
                .applyTo(line);
        project = label(line, "status.project", "The title of a project, saved");
        log = label(line, "status.log", "9999 entries, chain whole");
        ambient = label(line, "status.ambient", "Air 23.4 \u00b0C");
        supply = label(line, "status.supply", "Supply 10 to 16 V");
        registration = desk.listen(new AnyChange(this::show));
        show();
        return line;
    }

    private static CLabel label(Composite line, String id, String longest) {
        CLabel label = new CLabel(line, SWT.NONE); // shortens what does not fit, and the whole stands in its hover
        Ids.name(label, id);
        label.setMargins(0, 1, 0, 1);
        GC gc = new GC(label);
        int width = gc.textExtent(longest).x + Spacing.GAP;
        gc.dispose();
        // The room is fixed: the bar gives it once, before there is a project to speak of. With what the platform keeps
        // for itself it must fit beside it in a window 1280 points wide.
        GridDataFactory.swtDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .hint(width, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    private void show() {
        if (project == null || project.isDisposed()) {
            return;
        }
        Optional<DeskStatus> status = desk.status();
        set(project, status.map(this::project).orElse("No project open"));
        set(log, status.map(open -> open.logSentence()).orElse(""));
        set(ambient, status.map(StatusTrim::ambient).orElse(""));
        set(supply, status.map(StatusTrim::supply).orElse(""));
        String sentences =
                status.map(open -> String.join("\n", open.sentences())).orElse("");
        for (CLabel label : new CLabel[] {project, log, ambient, supply}) {
            label.setToolTipText(sentences);
        }
    }

    /** A long title loses its end, never the words behind it. */
    private String project(DeskStatus status) {
        String state = status.readOnly() ? ", read only" : status.dirty() ? ", not saved" : ", saved";
        int room = project.getSize().x == 0 ? Integer.MAX_VALUE : project.getSize().x;
        GC gc = new GC(project);
        String title = status.title();
        int length = title.length();
        String text = title + state;
        while (length > 1 && gc.textExtent(text).x > room) {
            length--;
            text = title.substring(0, length).stripTrailing() + "\u2026" + state;
        }
        gc.dispose();
        return text;
    }

    private static String ambient(DeskStatus status) {
        return status.ambientCelsius().isEmpty()
                ? "Air not stated"
                : Numbers.format("Air %.1f \u00b0C", status.ambientCelsius().getAsDouble());
    }

    private static String supply(DeskStatus status) {
        return status.lastSupplyVolts().isPresent()
                ? Numbers.format("Supply %.2f V", status.lastSupplyVolts().getAsDouble())
                : Numbers.format("Supply %.4g to %.4g V", status.supplyLowestVolts(), status.supplyHighestVolts());
    }

    private static void set(CLabel label, String text) {
        if (!text.equals(label.getText())) {
            label.setText(text);
        }
    }

    @Override
    public void dispose() {
        if (registration != null) {
            registration.close();
        }
        super.dispose();
    }
}
