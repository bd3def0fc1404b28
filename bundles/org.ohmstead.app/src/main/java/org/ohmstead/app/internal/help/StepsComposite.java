// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.BitSet;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;

/** Shows a {@link StepSheet}: its links run commands, and its steps can be ticked off. */
final class StepsComposite extends Composite {
    private final StepSheet sheet;
    private final BitSet done;
    private final Consumer<String> run;
    private final Consumer<BitSet> keep;
    private final HelpPageView page;

    /**
     * Makes the steps.
     *
     * @param parent where they stand
     * @param sheet the steps
     * @param done which are done, from 0
     * @param run called with the command of a link that the user follows
     * @param keep called with what is done whenever that changes
     */
    StepsComposite(Composite parent, StepSheet sheet, BitSet done, Consumer<String> run, Consumer<BitSet> keep) {
        super(parent, SWT.NONE);
        this.sheet = sheet;
        this.done = (BitSet) done.clone();
        this.run = run;
        this.keep = keep;
        setLayout(new FillLayout());
        page = new HelpPageView(this, this::follow);
        page.show(sheet.page(this.done::get), List.of());
    }

    @Override
    public boolean setFocus() {
        return page.control().setFocus();
    }

    private void follow(String href) {
        if (href.startsWith(StepSheet.COMMAND)) {
            run.accept(href.substring(StepSheet.COMMAND.length()));
        } else if (href.startsWith(StepSheet.TICK)) {
            done.flip(Integer.parseInt(href.substring(StepSheet.TICK.length())));
            page.showAgain(sheet.page(done::get));
            keep.accept((BitSet) done.clone());
        }
    }
}
