// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** How all stands, the step at hand in large type, what to do first; and the emergency stop, which is always there. */
final class TopBar extends Composite {
    private static final Messages TEXTS = Messages.of(TopBar.class);

    /** The keys that press the emergency stop anywhere in the workbench. */
    private static final double LARGE = 2;

    private static final int STATE_WIDTH = 225;

    private final Label state;
    private final Label where;
    private final Button first;
    private final StepBanner banner;
    private Runnable todo = () -> {};

    TopBar(Composite parent, Runnable emergencyStop) {
        super(parent, SWT.NONE);
        Spacing.group(3).spacing(Spacing.MARGIN, 0).applyTo(this);
        Composite words = new Composite(this, SWT.NONE);
        Spacing.tight(1).applyTo(words);
        GridDataFactory.fillDefaults().hint(STATE_WIDTH, SWT.DEFAULT).applyTo(words);
        state = Ids.name(new Label(words, SWT.NONE), "console.state");
        state.setFont(new BigFonts(this).times(LARGE, true));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(state);
        where = Ids.name(new Label(words, SWT.WRAP), "console.where");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(STATE_WIDTH, SWT.DEFAULT)
                .applyTo(where);
        first = Ids.name(new Button(words, SWT.PUSH), "console.first");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(first);
        first.setVisible(false);
        first.addListener(SWT.Selection, event -> todo.run());
        banner = new StepBanner(this);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(banner);
        StopButton stop = Ids.name(new StopButton(this, TEXTS.text("stop.keys"), emergencyStop), "console.stop");
        GridDataFactory.fillDefaults().align(SWT.END, SWT.FILL).applyTo(stop);
    }

    void refresh(RunDesk runs) {
        banner.show(runs);
        Tones tones = Tones.of(this);
        put(state, stateWords(runs));
        state.setForeground(
                runs.halted()
                        ? tones.error()
                        : runs.running() ? tones.accent() : runs.whyNot().isEmpty() ? tones.ok() : tones.text());
        put(where, whereWords(runs));
        where.setForeground(tones.mutedText());
    }

    private static String stateWords(RunDesk runs) {
        if (runs.halted()) {
            return TEXTS.text("top.stopped");
        }
        if (runs.course().rest().isPresent()) {
            return TEXTS.text(
                    "top.resting",
                    RunWords.time(runs.course().rest().get().left().plusMillis(999)));
        }
        if (runs.running()) {
            return TEXTS.text(
                    "top.measuring",
                    runs.course().progress().elapsed().map(RunWords::time).orElse(""));
        }
        if (runs.whyNot().isEmpty()) {
            return runs.course().next().isPresent() ? TEXTS.text("top.ready") : TEXTS.text("top.allDone");
        }
        return TEXTS.text("top.notReady");
    }

    private static String whereWords(RunDesk runs) {
        String operator = runs.choices().operator();
        long done = runs.course().rows().stream()
                .filter(row -> row.status() == ItemRow.Status.DONE)
                .count();
        String all = Integer.toString(runs.course().rows().size());
        return operator.isBlank()
                ? TEXTS.text("top.where", RunWords.bench(runs), Long.toString(done), all)
                : TEXTS.text("top.whereBy", RunWords.bench(runs), operator, Long.toString(done), all);
    }

    /** Offers what to do first; nothing when all is ready. */
    void offer(Optional<String> words, Runnable newTodo) {
        todo = newTodo;
        boolean there = words.isPresent();
        words.filter(each -> !each.equals(first.getText())).ifPresent(each -> {
            first.setText(each);
            first.requestLayout();
        });
        if (there != first.getVisible()) {
            first.setVisible(there);
            ((GridData) first.getLayoutData()).exclude = !there;
            getParent().layout(true, true);
        }
    }

    private static void put(Label label, String words) {
        if (!words.equals(label.getText())) {
            label.setText(words);
            label.setToolTipText(words);
        }
    }
}
