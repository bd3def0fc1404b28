// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.plot.Decimation;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Window;

/**
 * What a recording shows, thinned so that it can be drawn at once.
 *
 * @param channels what each channel shows
 * @param words what the measurement did when it was recorded
 */
record AcquisitionLook(List<Channel> channels, String words) {
    private static final int BUCKETS = 400;
    private static final int CYCLES = 4;
    private static final int LONGEST_SPECTRUM = 1 << 16;
    private static final double LONGEST_WAVE_SECONDS = 0.02;
    private static final double LOWEST_DBV = -140;
    private static final double LOWEST_HZ = 20;
    private static final double MILLI = 1000;
    /** With more than this beside the fundamental there is no tone to speak of. */
    private static final double NO_TONE_RATIO = 0.6;

    /**
     * One channel.
     *
     * @param name "A", "B" and so on, or "A+B" for a bridged load
     * @param powerWatts output power; empty when there is no tone
     * @param thdRatio harmonics over the fundamental; empty when there is no tone
     * @param clipped whether the tops are cut off
     * @param wave volts over milliseconds
     * @param spectrum dB re 1 V over hertz
     */
    record Channel(
            String name,
            OptionalDouble powerWatts,
            OptionalDouble thdRatio,
            boolean clipped,
            List<PlotPoint> wave,
            List<PlotPoint> spectrum) {
        Channel {
            wave = List.copyOf(wave);
            spectrum = List.copyOf(spectrum);
        }
    }

    AcquisitionLook {
        channels = List.copyOf(channels);
    }

    /** Looks at a recording; takes a while. */
    static AcquisitionLook of(Acquisition acquisition, BenchLoad load, Mode mode, String words) {
        List<Channel> channels = new ArrayList<>();
        List<Waveform> waves = acquisition.output().channels();
        for (int i = 0; i < waves.size(); i++) {
            LoadBranch branch = load.branches().get(Math.min(i, load.branches().size() - 1));
            String name = mode == Mode.BRIDGED ? "A+B" : String.valueOf((char) ('A' + i));
            channels.add(channel(name, waves.get(i), branch));
        }
        return new AcquisitionLook(channels, words);
    }

    private static Channel channel(String name, Waveform wave, LoadBranch branch) {
        Optional<ChannelAnalysis> tone = analyzed(wave, branch);
        boolean burst = tone.flatMap(ChannelAnalysis::burst).isPresent();
        OptionalDouble watts = tone.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        burst
                                ? tone.get().burst().orElseThrow().powerWatts()
                                : tone.get().powerWatts());
        OptionalDouble thd = tone.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(tone.get().thdFRatio());
        return new Channel(
                name,
                watts,
                thd,
                tone.isPresent() && tone.get().clipping().clipped(),
                wave(wave, tone.map(ChannelAnalysis::frequencyHz)),
                spectrum(wave));
    }

    private static Optional<ChannelAnalysis> analyzed(Waveform wave, LoadBranch branch) {
        LoadImpedance impedance = branch.inductanceHenries() > 0
                ? new LoadImpedance.SeriesInductance(branch.ohms(), branch.inductanceHenries())
                : new LoadImpedance.Resistance(branch.ohms());
        try {
            return Optional.of(WaveformAnalyzer.analyze(wave, AnalysisSettings.forLoad(impedance)))
                    .filter(found -> found.thdPlusNoiseRRatio() < NO_TONE_RATIO);
        } catch (CaptureException noTone) {
            return Optional.empty();
        }
    }

    private static List<PlotPoint> wave(Waveform wave, Optional<Double> frequencyHz) {
        double seconds = frequencyHz.map(hertz -> CYCLES / hertz).orElse(LONGEST_WAVE_SECONDS);
        int count = (int) Math.min(wave.size(), Math.max(2, Math.ceil(seconds * wave.sampleRateHz())));
        double[] volts = wave.slice(0, count).toArray();
        return Decimation.envelope(0, MILLI / wave.sampleRateHz(), volts, 0, count, BUCKETS);
    }

    private static List<PlotPoint> spectrum(Waveform wave) {
        int count = Math.min(wave.size(), LONGEST_SPECTRUM);
        Spectrum spectrum = Spectrum.of(wave.slice(0, count), Window.BLACKMAN_HARRIS_4);
        List<PlotPoint> points = new ArrayList<>();
        int from = Math.max(1, (int) Math.ceil(LOWEST_HZ / spectrum.binHz()));
        int size = Math.max(0, spectrum.size() - from);
        double[] hertz = new double[size];
        double[] levels = new double[size];
        for (int i = 0; i < size; i++) {
            hertz[i] = spectrum.frequencyHz(from + i);
            levels[i] = Math.max(LOWEST_DBV, 20 * Math.log10(Math.max(1e-12, spectrum.voltsRmsAt(from + i))));
        }
        points.addAll(Decimation.logEnvelope(hertz, levels, BUCKETS));
        return points;
    }
}
