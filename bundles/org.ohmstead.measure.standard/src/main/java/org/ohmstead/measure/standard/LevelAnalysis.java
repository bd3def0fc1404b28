// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;

/** Looks at one channel of one level. */
final class LevelAnalysis {
    private LevelAnalysis() {}

    static ChannelAnalysis analyze(Waveform waveform, LoadBranch branch, double frequencyHz) throws CaptureException {
        return WaveformAnalyzer.analyze(
                waveform, AnalysisSettings.forLoad(impedance(branch)).withFrequencyHz(frequencyHz));
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
                    .orElseThrow(() -> new EvaluationException(name + ": no tone burst was found, but the step \""
                            + stepId + "\" is a burst. Check the stimulus, and that the capture holds a whole burst."))
                    .powerWatts();
        }
        if (analysis.burst().isPresent()) {
            throw new EvaluationException(name + ": the tone comes in bursts, but the step \"" + stepId
                    + "\" wants a steady tone. Check the stimulus, or that the recording did not begin too early.");
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
