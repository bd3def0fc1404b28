// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** What to do when there is no plan to carry out. */
final class EmptyPane extends Composite {
    private static final Messages TEXTS = Messages.of(EmptyPane.class);

    private static final int WIDTH = 420;
    private static final double LARGE = 1.3;

    private final Label words;
    private final Composite buttons;
    private final Button open;
    private final Button demo;
    private final Button plan;

    EmptyPane(Composite parent, ConsoleHost host) {
        super(parent, SWT.NONE);
        Spacing.page(1).applyTo(this);
        Composite middle = new Composite(this, SWT.NONE);
        Spacing.page(1).applyTo(middle);
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .applyTo(middle);
        words = Ids.name(new Label(middle, SWT.WRAP | SWT.CENTER), "console.empty");
        words.setFont(new BigFonts(this).times(LARGE, false));
        GridDataFactory.fillDefaults().hint(WIDTH, SWT.DEFAULT).applyTo(words);
        buttons = new Composite(middle, SWT.NONE);
        Spacing.group(3).applyTo(buttons);
        GridDataFactory.fillDefaults().align(SWT.CENTER, SWT.CENTER).applyTo(buttons);
        open = button(TEXTS.text("empty.open"), "console.empty.open", () -> host.command(ProjectCommands.OPEN));
        demo = button(TEXTS.text("empty.demo"), "console.empty.demo", () -> host.command(ProjectCommands.DEMO));
        plan = button(TEXTS.text("empty.plan"), "console.empty.plan", () -> host.open("$.plan"));
    }

    private Button button(String text, String id, Runnable deed) {
        Button button = Ids.name(new Button(buttons, SWT.PUSH), id);
        button.setText(text);
        button.addListener(SWT.Selection, event -> deed.run());
        GridDataFactory.fillDefaults().applyTo(button);
        return button;
    }

    /**
     * Says what to do.
     *
     * @return whether there is nothing else to show
     */
    boolean show(RunStage stage) {
        boolean alone = stage == RunStage.NO_PROJECT || stage == RunStage.NO_PLAN || stage == RunStage.READ_ONLY;
        String sentence = alone ? stage.obstacle().orElse("") : "";
        if (alone && !sentence.equals(words.getText())) {
            words.setText(sentence);
            place(open, stage == RunStage.NO_PROJECT);
            place(demo, stage == RunStage.NO_PROJECT);
            place(plan, stage == RunStage.NO_PLAN);
            layout(true, true);
        }
        return alone;
    }

    private static void place(Button button, boolean there) {
        button.setVisible(there);
        ((GridData) button.getLayoutData()).exclude = !there;
    }

    @Override
    public boolean setFocus() {
        if (buttons.isDisposed()) {
            return false;
        }
        if (open.getVisible()) {
            return open.setFocus();
        }
        return plan.getVisible() ? plan.setFocus() : super.setFocus();
    }
}
