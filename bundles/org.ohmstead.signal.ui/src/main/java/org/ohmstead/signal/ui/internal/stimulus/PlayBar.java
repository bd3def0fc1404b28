// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.ohmstead.signal.stimulus.ChannelUse;
import org.ohmstead.signal.stimulus.SignalPlayer;
import org.ohmstead.signal.stimulus.SoundOutput;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.BackgroundWork;

/** Plays the signal by the sound card, once the user has said that no loudspeaker hangs on it. */
final class PlayBar extends Composite {
    private static final int LOWEST_DB = -60;
    private static final int USUAL_DB = -30;
    private static final double FADE_SECONDS = 5;
    private static final int COLUMNS = 5;
    private static final int SCALE_WIDTH = 140;

    private final BackgroundWork work;
    private final Messages messages;
    private final SignalPlayer player;
    private final Button loudspeakersOff;
    private final Scale volume;
    private final Label decibels;
    private final Button play;
    private final Button stop;
    private final Consumer<String> failed;
    private Optional<Stimulus> stimulus = Optional.empty();
    private ChannelUse channels = ChannelUse.BOTH;
    private boolean busy;

    /**
     * Makes the bar, with nothing to play.
     *
     * @param failed told why something cannot be played
     */
    PlayBar(Composite parent, BackgroundWork work, SoundOutput output, Messages messages, Consumer<String> failed) {
        super(parent, SWT.NONE);
        this.work = work;
        this.messages = messages;
        this.failed = failed;
        player = new SignalPlayer(output);
        addDisposeListener(event -> player.close());
        Spacing.group(COLUMNS).applyTo(this);
        loudspeakersOff = Ids.name(new Button(this, SWT.CHECK), "signals.loudspeakers-off");
        loudspeakersOff.setText(messages.text("play.off"));
        loudspeakersOff.setToolTipText(messages.text("play.off.hint"));
        loudspeakersOff.addListener(SWT.Selection, event -> offChanged());
        decibels = Ids.name(new Label(this, SWT.RIGHT), "signals.volume.words");
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .applyTo(decibels);
        volume = Ids.name(new Scale(this, SWT.HORIZONTAL), "signals.volume");
        volume.setMinimum(0);
        volume.setMaximum(-LOWEST_DB);
        volume.setPageIncrement(10);
        volume.setSelection(USUAL_DB - LOWEST_DB);
        volume.setToolTipText(messages.text("play.volume.hint"));
        volume.addListener(SWT.Selection, event -> volumeChanged());
        GridDataFactory.swtDefaults().hint(SCALE_WIDTH, SWT.DEFAULT).applyTo(volume);
        play = button("play.play", "signals.play", this::start);
        stop = button("play.stop", "signals.stop", player::stop);
        volumeChanged();
        enable();
    }

    private Button button(String text, String id, Runnable pressed) {
        Button button = Ids.name(new Button(this, SWT.PUSH), id);
        button.setText(messages.text(text));
        button.addListener(SWT.Selection, event -> pressed.run());
        return button;
    }

    private double volumeDb() {
        return volume.getSelection() + LOWEST_DB;
    }

    private void volumeChanged() {
        decibels.setText(messages.text("play.volume", volumeDb()));
        decibels.requestLayout();
        player.setVolumeDb(volumeDb());
    }

    private void offChanged() {
        if (!loudspeakersOff.getSelection()) {
            player.stop();
        }
        enable();
    }

    /** Has this played when the user wants it; what plays stops when it is not the same. */
    void offer(Optional<Stimulus> newStimulus, ChannelUse newChannels) {
        player.stop();
        stimulus = newStimulus.filter(Stimulus::usable);
        channels = newChannels;
        enable();
    }

    private void start() {
        busy = true;
        enable();
        Stimulus wanted = stimulus.orElseThrow();
        SignalPlayer.Order order = new SignalPlayer.Order("", channels, volumeDb(), FADE_SECONDS, true);
        work.<Boolean>start(
                messages.text("play.title"),
                progress -> {
                    player.play(wanted, order, trouble -> work.later(() -> over(trouble)));
                    return true;
                },
                done -> enable(),
                failure -> over(Optional.of(String.valueOf(failure.getMessage()))));
    }

    private void over(Optional<String> trouble) {
        if (!isDisposed()) {
            busy = player.playing();
            enable();
            trouble.ifPresent(failed);
        }
    }

    private void enable() {
        if (!isDisposed()) {
            play.setEnabled(!busy && stimulus.isPresent() && loudspeakersOff.getSelection());
            stop.setEnabled(busy);
        }
    }
}
