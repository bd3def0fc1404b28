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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The row above two readings: which they are, which channel is looked at, and how the curves lie. */
final class PairBar {
    private static final Messages TEXTS = Messages.of(PairBar.class);
    private static final int ID_WIDTH = 80;

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
        first = field(bar, TEXTS.text("pair.first"), "pair.first");
        second = field(bar, TEXTS.text("pair.second"), "pair.second");
        Button swap = Ids.name(new Button(bar, SWT.PUSH), "pair.swap");
        swap.setText(TEXTS.text("pair.swap"));
        swap.setToolTipText(TEXTS.text("pair.swap.hint"));
        swap.addSelectionListener(
                SelectionListener.widgetSelectedAdapter(event -> choice.choose(choice.second(), choice.first())));
        channel = Ids.name(new Combo(bar, SWT.READ_ONLY), "pair.channel");
        channel.setItems(TEXTS.text("pair.channel.weakest"));
        channel.select(0);
        channel.setToolTipText(TEXTS.text("pair.channel.hint"));
        channel.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> channelChosen.run()));
        overlay = Ids.name(new Button(bar, SWT.CHECK), "pair.overlay");
        overlay.setText(TEXTS.text("pair.overlay"));
        overlay.setToolTipText(TEXTS.text("pair.overlay.hint"));
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
        field.setToolTipText(TEXTS.text("pair.id.hint"));
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
        String chosen = channel();
        channels = List.copyOf(wanted);
        List<String> items = new ArrayList<>();
        items.add(TEXTS.text("pair.channel.weakest"));
        channels.forEach(name -> items.add(TEXTS.text("pair.channel", name)));
        channel.setItems(items.toArray(new String[0]));
        channel.select(chosen.isEmpty() ? 0 : 1 + channels.indexOf(chosen));
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
