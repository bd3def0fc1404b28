// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** Chooses which curves are in sight: kind of power, mode, channel. */
final class ChoiceBar {
    private static final Messages TEXTS = Messages.of(ChoiceBar.class);

    private static final int SENTENCE_WIDTH = 120;

    private final Composite bar;
    private final Choice<PowerCurves.Sort> sort;
    private final Choice<CurveGroup> group;
    private final Choice<ChannelChoice> channels;
    private final Button joint;
    private final Label sentence;
    private final Runnable changed;
    private PowerCurves study = PowerCurves.NOTHING;

    /** A combo with the things that its texts stand for. */
    private static final class Choice<T> {
        private final Combo combo;
        private final Function<T, String> text;
        private List<T> offered = List.of();

        Choice(Combo combo, Function<T, String> text) {
            this.combo = combo;
            this.text = text;
        }

        Optional<T> chosen() {
            int index = combo.getSelectionIndex();
            return index >= 0 && index < offered.size() ? Optional.of(offered.get(index)) : Optional.empty();
        }

        /** Offers other things; the one whose text was chosen stays chosen when it is still there, else the first is. */
        void offer(List<T> things) {
            String before = combo.getText();
            offered = things;
            String[] texts = things.stream().map(text).toArray(String[]::new);
            if (!List.of(texts).equals(List.of(combo.getItems()))) {
                combo.setItems(texts);
                combo.requestLayout();
            }
            int index = List.of(texts).indexOf(before);
            combo.select(Math.max(0, index));
            combo.setEnabled(things.size() > 1);
        }

        void choose(T thing) {
            int index = offered.indexOf(thing);
            if (index >= 0) {
                combo.select(index);
            }
        }
    }

    ChoiceBar(Composite parent, Runnable changed, Runnable copy) {
        this.changed = changed;
        bar = new Composite(parent, SWT.NONE);
        Spacing.group(6).applyTo(bar);
        sort = new Choice<>(
                combo("power.kind", TEXTS.text("choice.kindHint"), this::sortChosen), PowerCurves.Sort::text);
        group = new Choice<>(
                combo("power.mode", TEXTS.text("choice.modeHint"), this::groupChosen),
                each -> Words.of(each.mode()) + ", " + Words.hertz(each.frequencyHz()));
        channels = new Choice<>(combo("power.channel", TEXTS.text("choice.channelHint"), changed), ChannelChoice::text);
        joint = Ids.name(new Button(bar, SWT.CHECK), "power.joint");
        joint.setText(TEXTS.text("choice.joint"));
        joint.setToolTipText(TEXTS.text("choice.jointHint"));
        joint.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> changed.run()));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(joint);
        sentence = Ids.name(new Label(bar, SWT.WRAP), "power.sentence");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(sentence);
        Button button = Ids.name(new Button(bar, SWT.PUSH), "power.copy");
        button.setText(TEXTS.text("choice.copy"));
        button.setToolTipText(TEXTS.text("choice.copyHint"));
        button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copy.run()));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
    }

    Composite control() {
        return bar;
    }

    private Combo combo(String id, String hint, Runnable chosen) {
        Combo combo = Ids.name(new Combo(bar, SWT.READ_ONLY), id);
        combo.setToolTipText(hint);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(combo);
        combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chosen.run()));
        return combo;
    }

    /** Offers what a study has, and keeps what was chosen as far as it is still there. */
    void offer(PowerCurves newStudy) {
        study = newStudy;
        sort.offer(study.sorts());
        offerGroups();
        sentence.requestLayout();
    }

    private void offerGroups() {
        group.offer(sort.chosen().map(study::groupsOf).orElse(List.of()));
        offerChannels();
    }

    private void offerChannels() {
        channels.offer(ChannelChoice.offeredBy(group.chosen()));
    }

    private void sortChosen() {
        offerGroups();
        changed.run();
    }

    private void groupChosen() {
        offerChannels();
        changed.run();
    }

    /** Turns to a group, unless it is the one in sight. */
    void choose(CurveGroup wanted) {
        if (group().filter(wanted::equals).isPresent()) {
            return;
        }
        sort.choose(PowerCurves.Sort.of(wanted));
        offerGroups();
        group.choose(wanted);
        groupChosen();
    }

    Optional<CurveGroup> group() {
        return group.chosen();
    }

    /** Returns whether the joint curve is wanted. */
    boolean jointly() {
        return joint.getSelection();
    }

    ChannelChoice channels() {
        return channels.chosen().orElse(new ChannelChoice.Lowest());
    }

    void say(String words, Color tone) {
        sentence.setText(words.replace("&", "&&"));
        sentence.setToolTipText(words.isEmpty() ? null : words);
        sentence.setForeground(tone);
    }
}
