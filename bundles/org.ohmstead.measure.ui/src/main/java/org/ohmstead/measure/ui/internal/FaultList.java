// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PluginView;
import org.ohmstead.model.Problem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What is wrong with plug-ins, and a way to bring back those that were set aside. */
final class FaultList extends Composite {
    private static final Messages TEXTS = Messages.of(FaultList.class);

    private static final int SENTENCE_WIDTH = 220;

    private final RunDesk runs;
    private List<Problem> problems = List.of();
    private List<PluginView> aside = List.of();

    FaultList(Composite parent, RunDesk runs) {
        super(parent, SWT.NONE);
        this.runs = runs;
        Spacing.group(3).spacing(Spacing.GAP, Spacing.TIGHT).applyTo(this);
    }

    /** Shows what is wrong now; returns whether that is something else than before. */
    boolean refresh(CatalogView view) {
        List<PluginView> setAside =
                view.plugins().stream().filter(PluginView::setAside).toList();
        if (view.problems().equals(problems) && setAside.equals(aside)) {
            return false;
        }
        problems = view.problems();
        aside = setAside;
        for (Control child : getChildren()) {
            child.dispose();
        }
        problems.forEach(this::line);
        for (PluginView plugin : aside) {
            Label none = new Label(this, SWT.NONE);
            GridDataFactory.swtDefaults().applyTo(none);
            Button back = Ids.name(new Button(this, SWT.PUSH), "console.back." + plugin.id());
            back.setText(TEXTS.text("measured.bringBack", plugin.name()));
            back.addListener(SWT.Selection, event -> runs.bringBack(plugin.kind(), plugin.id()));
            GridDataFactory.swtDefaults().span(2, 1).applyTo(back);
        }
        layout(true, true);
        return true;
    }

    private void line(Problem problem) {
        Label icon = new Label(this, SWT.NONE);
        icon.setImage(Icons.of(problem.severity()));
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(icon);
        Label words = Ids.name(new Label(this, SWT.WRAP), "console.fault");
        words.setText(problem.what() + " " + problem.remedy());
        words.setForeground(Tones.of(this).of(problem.severity()));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(2, 1)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(words);
    }
}
