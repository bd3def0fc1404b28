// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** Which reading is looked at, which of its levels, which channels; and the way to a file from elsewhere. */
public final class SelectorStrip extends Composite {
    private static final int LEAST_COMBO_WIDTH = 150;

    private final Label title;
    private final Combo levels;
    private final Button lower;
    private final Button higher;
    private final Button copy;
    private final Button figures;
    private final Composite channelChecks;
    private final Runnable channelsChanged;
    private final IntConsumer levelChosen;
    private List<String> channelNames = List.of();

    /**
     * Makes an empty strip.
     *
     * @param levelChosen called with the index of the level that the user chooses
     * @param channelsChanged called when the user shows or hides a channel
     * @param open called when the user wants a file from elsewhere
     * @param copied called when the user wants the figures on the clipboard
     * @param turned called when the user wants to see the figures instead of the charts, or the charts again
     */
    public SelectorStrip(
            Composite parent,
            IntConsumer levelChosen,
            Runnable channelsChanged,
            Runnable open,
            Runnable copied,
            Runnable turned) {
        super(parent, SWT.NONE);
        this.levelChosen = levelChosen;
        this.channelsChanged = channelsChanged;
        FlowRows.applyTo(this);
        Composite reading = new Composite(this, SWT.NONE);
        Spacing.group(3).applyTo(reading);
        title = Ids.name(new Label(reading, SWT.NONE), "capture.title");
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(title);
        levels = Ids.name(new Combo(reading, SWT.DROP_DOWN | SWT.READ_ONLY), "capture.level");
        levels.setToolTipText(Texts.say("strip.level.hint"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(LEAST_COMBO_WIDTH, SWT.DEFAULT)
                .applyTo(levels);
        levels.addListener(SWT.Selection, event -> chosen());
        Composite steps = new Composite(reading, SWT.NONE);
        Spacing.tight(2).applyTo(steps);
        lower = step(steps, "\u2212", "capture.lower", Texts.say("strip.lower.hint"), -1);
        higher = step(steps, "+", "capture.higher", Texts.say("strip.higher.hint"), 1);
        Composite tools = new Composite(this, SWT.NONE);
        Spacing.group(4).applyTo(tools);
        channelChecks = new Composite(tools, SWT.NONE);
        Spacing.group(1).applyTo(channelChecks);
        GridDataFactory.swtDefaults()
                .align(SWT.BEGINNING, SWT.CENTER)
                .grab(true, false)
                .applyTo(channelChecks);
        figures = Ids.name(new Button(tools, SWT.TOGGLE), "capture.show-figures");
        figures.setText(Texts.say("strip.figures"));
        figures.setToolTipText(Texts.say("strip.figures.hint"));
        figures.addListener(SWT.Selection, event -> turned.run());
        offerFigures(false);
        Button file = Ids.name(new Button(tools, SWT.PUSH), "capture.open-file");
        file.setText(Texts.say("strip.open"));
        file.addListener(SWT.Selection, event -> open.run());
        copy = Ids.name(new Button(tools, SWT.PUSH), "capture.copy");
        copy.setText(Texts.say("strip.copy"));
        copy.setToolTipText(Texts.say("strip.copy.hint"));
        copy.addListener(SWT.Selection, event -> copied.run());
        showLevels("", List.of(), -1);
    }

    private Button step(Composite parent, String text, String id, String hint, int by) {
        Button button = Ids.name(new Button(parent, SWT.PUSH), id);
        button.setText(text);
        button.setToolTipText(hint);
        button.addListener(SWT.Selection, event -> {
            levels.select(levels.getSelectionIndex() + by);
            chosen();
        });
        return button;
    }

    private void chosen() {
        enableSteps();
        levelChosen.accept(levels.getSelectionIndex());
    }

    private void enableSteps() {
        int index = levels.getSelectionIndex();
        lower.setEnabled(index > 0);
        higher.setEnabled(index >= 0 && index < levels.getItemCount() - 1);
    }

    /**
     * Shows the levels of a reading.
     *
     * @param caption what the captures belong to; empty for nothing
     * @param texts one for each level, lowest first
     * @param chosen which one is shown; -1 for none
     */
    public void showLevels(String caption, List<String> texts, int chosen) {
        title.setText(caption);
        title.setToolTipText(caption);
        levels.setItems(texts.toArray(String[]::new));
        if (chosen >= 0) {
            levels.select(chosen);
        }
        levels.setEnabled(!texts.isEmpty());
        enableSteps();
        levels.requestLayout();
        title.requestLayout();
    }

    /** Shows the same levels with other texts; the chosen one stays so. */
    public void relabel(List<String> texts) {
        int chosen = levels.getSelectionIndex();
        levels.setItems(texts.toArray(String[]::new));
        if (chosen >= 0) {
            levels.select(chosen);
        }
    }

    /** Lets the user turn from the charts to the figures and back, where there is no room for both. */
    public void offerFigures(boolean offered) {
        GridDataFactory.fillDefaults().exclude(!offered).applyTo(figures);
        figures.setVisible(offered);
        figures.requestLayout();
    }

    /** Returns whether the user wants the figures instead of the charts where there is no room for both. */
    public boolean figuresWanted() {
        return figures.getSelection();
    }

    /** Lets the user copy, or not while there is nothing to copy. */
    public void enableCopy(boolean on) {
        copy.setEnabled(on);
    }

    /** Offers channels to show and hide, all of them shown unless the same names were offered before. */
    public void offerChannels(List<String> names) {
        if (names.equals(channelNames)) {
            return;
        }
        for (Control child : channelChecks.getChildren()) {
            child.dispose();
        }
        channelNames = List.copyOf(names);
        Spacing.group(Math.max(1, names.size())).applyTo(channelChecks);
        for (String name : names) {
            Button check = Ids.name(new Button(channelChecks, SWT.CHECK), "capture.channel." + idOf(name));
            check.setText(name);
            check.setToolTipText(Texts.say("strip.channel.hint", name));
            check.setSelection(true);
            check.addListener(SWT.Selection, event -> {
                keepOneShown(check);
                channelsChanged.run();
            });
        }
        channelChecks.requestLayout();
        layout(true, true);
    }

    private static String idOf(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "-");
    }

    /** An empty chart would say nothing, so the last channel stays. */
    private void keepOneShown(Button changed) {
        if (shownChannels().isEmpty()) {
            changed.setSelection(true);
        }
    }

    /** Returns the indices of the channels that are shown. */
    public List<Integer> shownChannels() {
        List<Integer> shown = new ArrayList<>();
        for (int i = 0; i < channelChecks.getChildren().length; i++) {
            if (channelChecks.getChildren()[i] instanceof Button check && check.getSelection()) {
                shown.add(i);
            }
        }
        return shown;
    }
}
