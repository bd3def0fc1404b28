// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.events.VerifyEvent;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.Stock;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** A line in which a network is typed; the character at fault is underlined while one types. */
final class NetworkEntry extends Composite {
    private static final Messages TEXTS = Messages.of(NetworkEntry.class);

    private final StyledText text;
    private Stock stock = Stock.EMPTY;
    private Consumer<Network> handler = network -> {};
    private Consumer<Optional<String>> faultHandler = fault -> {};
    private Optional<Network> network = Optional.empty();
    private boolean setting;

    NetworkEntry(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(2).applyTo(this);
        Label label = new Label(this, SWT.NONE);
        label.setText(TEXTS.text("entry.network"));
        text = Ids.name(new StyledText(this, SWT.BORDER | SWT.SINGLE), "design.network");
        text.setFont(JFaceResources.getTextFont());
        text.setMargins(Spacing.TIGHT, Spacing.TIGHT, Spacing.TIGHT, Spacing.TIGHT);
        text.setToolTipText(TEXTS.text("entry.networkHint"));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(text);
        text.addListener(SWT.Modify, event -> read());
        text.addVerifyKeyListener(this::keyVerified);
        text.addListener(SWT.Traverse, NetworkEntry::traversed);
    }

    /** Enter shows the network; Tab must not become part of it. */
    private void keyVerified(VerifyEvent event) {
        if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
            network.ifPresent(handler);
            event.doit = false;
        } else if (event.keyCode == SWT.TAB) {
            event.doit = false;
        }
    }

    private static void traversed(Event event) {
        if (event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
            event.doit = true;
        }
    }

    /** Has someone told of each network that the user types. */
    void onNetwork(Consumer<Network> newHandler) {
        handler = newHandler;
    }

    /** Has someone told what is wrong with what is typed; nothing when all is well. */
    void onFault(Consumer<Optional<String>> newHandler) {
        faultHandler = newHandler;
    }

    /** Reads with other parts from now on. */
    void setStock(Stock newStock) {
        stock = newStock;
        setting = true;
        read();
        setting = false;
    }

    /** Shows a network that was chosen elsewhere, without telling anyone. */
    void setNetwork(String notation) {
        setting = true;
        if (!notation.equals(text.getText())) {
            text.setText(notation);
        }
        setting = false;
    }

    private void read() {
        network = Optional.empty();
        text.setStyleRange(null);
        String typed = text.getText();
        if (typed.isBlank()) {
            faultHandler.accept(Optional.empty());
            return;
        }
        try {
            Network read = NetworkNotation.parse(typed, stock);
            network = Optional.of(read);
            faultHandler.accept(Optional.empty());
            if (!setting) {
                handler.accept(read);
            }
        } catch (NotationException wrong) {
            faultHandler.accept(Optional.of(wrong.getMessage()));
            underline(wrong.position());
        }
    }

    /** Underlines the character at fault; at the end, where there is none, the last one. */
    private void underline(int position) {
        int length = text.getCharCount();
        StyleRange range = new StyleRange();
        range.start = Math.max(0, Math.min(position, length - 1));
        range.length = 1;
        range.underline = true;
        range.underlineStyle = SWT.UNDERLINE_SQUIGGLE;
        range.underlineColor = Tones.of(this).error();
        range.foreground = Tones.of(this).error();
        text.setStyleRange(range);
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && text.setFocus();
    }
}
