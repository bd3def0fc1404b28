// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.Window;
import org.ohmstead.signal.stimulus.SignalDraft;
import org.ohmstead.signal.stimulus.SignalFile;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.signal.stimulus.StimulusRemark;
import org.ohmstead.signal.stimulus.TestSignal;

/** What the form's choice leads to, worked out in the background. */
sealed interface SignalPreview {
    /** The most samples that are looked at; a spectrum of so many takes a fraction of a second. */
    int MOST_SAMPLES = 1 << 20;

    /**
     * A signal that can be made, or one that reaches beyond full scale.
     *
     * @param file as it would be written
     * @param wave its samples as stored, from the first
     * @param window what of them to show first
     * @param spectrum of the same samples
     */
    record Shown(SignalFile file, PlotSource wave, Optional<ViewWindow> window, PlotSource spectrum)
            implements SignalPreview {}

    /**
     * No signal.
     *
     * @param settingId which setting is to blame; empty for none alone
     * @param sentence why
     */
    record Refused(String settingId, String sentence) implements SignalPreview {}

    /** Works out a choice. */
    static SignalPreview of(SignalChoice choice) {
        SignalDraft draft = choice.kind().read(choice.texts());
        if (draft instanceof SignalDraft.Refused refused) {
            return new Refused(refused.settingId(), refused.sentence());
        }
        TestSignal signal = ((SignalDraft.Made) draft).signal();
        Optional<StimulusRemark> whyNot = Stimulus.whyNot(signal, choice.sampleRateHz());
        if (whyNot.isPresent()) {
            return new Refused("", whyNot.get().sentence());
        }
        Stimulus stimulus = Stimulus.of(signal, choice.sampleRateHz(), choice.wholeCycles());
        SignalFile file = new SignalFile(stimulus, choice.format(), choice.channels(), choice.marked(), 1);
        int count = count(stimulus);
        Waveform wave = file.stored(0, count);
        boolean loop = stimulus.facts().seamless() && (count == stimulus.frames() || wholeTones(stimulus, count));
        Spectrum spectrum = Spectrum.of(wave, loop ? Window.RECTANGULAR : Window.BLACKMAN_HARRIS_4);
        OptionalDouble first = PreviewPlots.firstSeconds(stimulus);
        double perSecond = first.orElse(wave.durationSeconds()) < 1 ? 1000 : 1;
        return new Shown(
                file,
                PreviewPlots.wave(wave, perSecond),
                first.isPresent() ? Optional.of(ViewWindow.ofX(0, first.getAsDouble() * perSecond)) : Optional.empty(),
                PlotSource.of(PreviewPlots.spectrum(spectrum)));
    }

    /** The whole, or of what is longer as many whole seconds as are looked at. */
    private static int count(Stimulus stimulus) {
        if (stimulus.frames() <= MOST_SAMPLES) {
            return (int) stimulus.frames();
        }
        return MOST_SAMPLES / stimulus.sampleRateHz() * stimulus.sampleRateHz();
    }

    /** Whether a part of steady tones holds whole cycles of each, so that its spectrum needs no window. */
    private static boolean wholeTones(Stimulus stimulus, int count) {
        TestSignal signal = stimulus.signal();
        boolean steady = signal instanceof TestSignal.Sine
                || signal instanceof TestSignal.WarmUp
                || signal instanceof TestSignal.TwoTone
                || signal instanceof TestSignal.MultiTone;
        return steady
                && stimulus.facts().frequenciesHz().stream()
                        .mapToDouble(hertz -> hertz * count / stimulus.sampleRateHz())
                        .allMatch(cycles -> Math.abs(cycles - Math.rint(cycles)) < 1e-6);
    }
}
