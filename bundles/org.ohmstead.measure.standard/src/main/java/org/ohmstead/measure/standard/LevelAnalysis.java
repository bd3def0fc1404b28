// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.Locale;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.units.text.Language;

/** Looks at one channel of one level. */
final class LevelAnalysis {
    private LevelAnalysis() {}

    static ChannelAnalysis analyze(Waveform waveform, LoadBranch branch, double frequencyHz) throws CaptureException {
        AnalysisSettings settings = AnalysisSettings.forLoad(impedance(branch)).withFrequencyHz(frequencyHz);
        // What is noted on the way is logged with the reading, and the log has one language.
        try {
            return Language.speaking(Locale.ENGLISH, () -> WaveformAnalyzer.analyze(waveform, settings));
        } catch (CaptureException inEnglish) {
            // What went wrong is shown too, so it is asked for again in the language of whoever reads it.
            return WaveformAnalyzer.analyze(waveform, settings);
        }
    }

    /**
     * Returns the power that counts for a stimulus: inside the burst, or of the steady tone.
     *
     * @param name of the capture, for the message
     */
    static double powerWatts(Stimulus stimulus, String stepId, String name, ChannelAnalysis analysis)
            throws EvaluationException {
        if (stimulus instanceof Stimulus.ToneBurst) {
            return analysis.burst()
                    .orElseThrow(() -> Faults.evaluation("noBurst", name, stepId))
                    .powerWatts();
        }
        if (analysis.burst().isPresent()) {
            throw Faults.evaluation("noSteadyTone", name, stepId);
        }
        return analysis.powerWatts();
    }

    static LoadImpedance impedance(LoadBranch branch) {
        return branch.inductanceHenries() > 0
                ? new LoadImpedance.SeriesInductance(branch.ohms(), branch.inductanceHenries())
                : new LoadImpedance.Resistance(branch.ohms());
    }

    static String channelName(Mode mode, int channel) {
        return mode == Mode.BRIDGED ? "A+B" : String.valueOf((char) ('A' + channel));
    }
}
