// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.signal.gain.ChannelBalance;
import org.ohmstead.signal.gain.GainWords;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** How alike two channels are: with each key that is typed, or with each reading that comes into the log. */
final class BalancePane extends Composite {
    private static final int FIELDS = 11;

    private final Messages messages;
    private final Supplier<LogFacts> facts;
    private final LiveQuantity first;
    private final LiveQuantity second;
    private final LiveQuantity tolerance;
    private final Button follow;
    private final MessageLine result;
    private String entryId = "";

    BalancePane(Composite parent, Messages messages, Supplier<LogFacts> facts) {
        super(parent, SWT.NONE);
        this.messages = messages;
        this.facts = facts;
        Spacing.tight(1).applyTo(this);
        Composite row = new Composite(this, SWT.NONE);
        Spacing.group(FIELDS).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        Label title = new Label(row, SWT.NONE);
        title.setText(messages.text("balance.title"));
        title.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        GridDataFactory.swtDefaults().indent(0, 0).applyTo(title);
        String hint = messages.text("balance.volts.hint");
        first = new LiveQuantity(
                row, "gain.balance.first", messages.text("balance.first"), Measure.of(Unit.VOLT), hint);
        second = new LiveQuantity(
                row, "gain.balance.second", messages.text("balance.second"), Measure.of(Unit.VOLT), hint);
        tolerance = new LiveQuantity(
                row,
                "gain.balance.tolerance",
                messages.text("balance.tolerance"),
                Measure.of(Unit.DECIBEL),
                messages.text("balance.tolerance.hint"));
        tolerance.show(ChannelBalance.USUAL_TOLERANCE_DB);
        follow = Ids.name(new Button(row, SWT.CHECK), "gain.balance.follow");
        follow.setText(messages.text("balance.follow"));
        follow.setToolTipText(messages.text("balance.follow.hint"));
        result = new MessageLine(this, "gain.balance.result");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(result);
        first.onTyping(this::typed);
        second.onTyping(this::typed);
        tolerance.onTyping(this::compare);
        follow.addListener(SWT.Selection, event -> compare());
        compare();
    }

    private void typed() {
        follow.setSelection(false);
        compare();
    }

    /** The log holds other entries. */
    void logChanged() {
        if (follow.getSelection()) {
            compare();
        }
    }

    /** Writes all anew, as numbers are shown now. */
    void refresh() {
        first.refresh();
        second.refresh();
        tolerance.refresh();
        compare();
    }

    private void compare() {
        OptionalDouble allowed = tolerance.value();
        if (allowed.isEmpty()) {
            result.mention(messages.text("balance.tolerance.hint"));
            return;
        }
        if (follow.getSelection()) {
            Optional<LogFacts.Found<ChannelBalance>> found = facts.get().balance(allowed.getAsDouble());
            if (found.isEmpty()) {
                result.mention(messages.text("balance.nothing"));
                return;
            }
            entryId = found.get().entryId();
            first.show(found.get().fact().channels().get(0).voltsRms());
            second.show(found.get().fact().channels().get(1).voltsRms());
            show(found.get().fact());
            return;
        }
        entryId = "";
        if (first.value().isEmpty() || second.value().isEmpty()) {
            result.mention(messages.text("balance.empty"));
            return;
        }
        show(ChannelBalance.of(first.value().getAsDouble(), second.value().getAsDouble(), allowed.getAsDouble()));
    }

    private void show(ChannelBalance balance) {
        String words =
                GainWords.current().withDecimalComma(Numbers.decimalComma()).balance(balance);
        String sentence = entryId.isEmpty() ? words : messages.text("balance.from", entryId, words);
        if (balance.matched()) {
            result.mention(sentence);
        } else {
            result.show(Severity.WARNING, sentence);
        }
    }
}
