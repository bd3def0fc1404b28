// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The row above two readings: which they are, which channel is looked at, and how the curves lie. */
final class PairBar {
    private static final int ID_WIDTH = 80;
    private static final String WEAKEST = "Weakest channel";

    private final Text first;
    private final Text second;
    private final Combo channel;
    private final Button overlay;
    private final PairChoice choice;
    private List<String> channels = List.of();

    PairBar(Composite parent, PairChoice choice, Runnable channelChosen, Runnable overlayChosen) {
        this.choice = choice;
        Composite bar = new Composite(parent, SWT.NONE);
        Spacing.group(8).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        first = field(bar, "&First:", "pair.first");
        second = field(bar, "&Second:", "pair.second");
        Button swap = Ids.name(new Button(bar, SWT.PUSH), "pair.swap");
        swap.setText("S&wap");
        swap.setToolTipText("Makes the second the first.");
        swap.addSelectionListener(
                SelectionListener.widgetSelectedAdapter(event -> choice.choose(choice.second(), choice.first())));
        channel = Ids.name(new Combo(bar, SWT.READ_ONLY), "pair.channel");
        channel.setItems(WEAKEST);
        channel.select(0);
        channel.setToolTipText("The channel that is looked at in both.");
        channel.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> channelChosen.run()));
        overlay = Ids.name(new Button(bar, SWT.CHECK), "pair.overlay");
        overlay.setText("Lay &over one another");
        overlay.setToolTipText("Draws both in one chart instead of side by side.");
        overlay.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> overlayChosen.run()));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(overlay);
    }

    private Text field(Composite bar, String label, String id) {
        Label name = new Label(bar, SWT.NONE);
        name.setText(label);
        Text field = Ids.name(new Text(bar, SWT.BORDER | SWT.SINGLE), id);
        field.setMessage("R0001");
        field.setToolTipText("The id of a reading, from the first column of the test log. Enter takes it.");
        GridDataFactory.fillDefaults()
                .hint(ID_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(field);
        field.addListener(SWT.DefaultSelection, event -> take());
        field.addListener(SWT.FocusOut, event -> take());
        field.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.keyCode == SWT.ESC) {
                showIds();
            }
        }));
        return field;
    }

    private void take() {
        choice.choose(first.getText().strip(), second.getText().strip());
    }

    /** Shows the ids that are chosen. */
    void showIds() {
        put(first, choice.first());
        put(second, choice.second());
    }

    private static void put(Text field, String text) {
        if (!field.getText().equals(text)) {
            field.setText(text);
        }
    }

    /** Offers the channels that the readings have; the chosen one stays so if it is among them. */
    void offer(List<String> wanted) {
        if (wanted.equals(channels)) {
            return;
        }
        String chosen = channel.getText();
        channels = List.copyOf(wanted);
        List<String> items = new ArrayList<>();
        items.add(WEAKEST);
        channels.forEach(name -> items.add("Channel " + name));
        channel.setItems(items.toArray(new String[0]));
        channel.select(Math.max(0, items.indexOf(chosen)));
        channel.getParent().layout();
    }

    /** Returns the name of the channel that is wanted; empty for the weakest. */
    String channel() {
        int index = channel.getSelectionIndex();
        return index > 0 ? channels.get(index - 1) : "";
    }

    boolean overlaid() {
        return overlay.getSelection();
    }

    boolean setFocus() {
        return first.setFocus();
    }
}
