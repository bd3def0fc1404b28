// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Window;

/** Our side of the analyses: what the scripts do in tone.py, with what the product has. */
final class CaptureJob {
    private static final AnalysisSettings SETTINGS = AnalysisSettings.forResistance(4);
    private static final double[] SCALE = {CaptureMaker.VOLTS_PER_FULL_SCALE};

    private CaptureJob() {}

    /** Reads a capture and analyses each channel, its spectrum too. Returns the figures, with the channel's number after the name. */
    static Map<String, Double> figures(Path file) throws CaptureException {
        Map<String, Double> figures = new LinkedHashMap<>();
        List<Waveform> channels = CaptureFile.read(file, SCALE).channels();
        for (int i = 0; i < channels.size(); i++) {
            Waveform channel = channels.get(i);
            ChannelAnalysis analysis = WaveformAnalyzer.analyze(channel, SETTINGS);
            Spectrum spectrum = Spectrum.of(channel, Window.BLACKMAN_HARRIS_4);
            double peak = 0;
            for (int bin = 0; bin < spectrum.size(); bin++) {
                peak = Math.max(peak, spectrum.voltsRmsAt(bin));
            }
            figures.put("frequencyHz." + i, analysis.frequencyHz());
            figures.put("outputVoltsRms." + i, analysis.outputVoltsRms());
            figures.put("outputVoltsPeak." + i, analysis.outputVoltsPeak());
            figures.put("dcVolts." + i, analysis.dcVolts());
            figures.put("crestFactorDb." + i, analysis.crestFactorDb());
            figures.put("fundamentalVoltsRms." + i, analysis.fundamentalVoltsRms());
            figures.put("thdFRatio." + i, analysis.thdFRatio());
            figures.put("thdPlusNoiseRRatio." + i, analysis.thdPlusNoiseRRatio());
            figures.put("driveOverOnsetDb." + i, analysis.clipping().driveOverOnsetDb());
            figures.put("spectrumPeakVolts." + i, peak);
        }
        return figures;
    }

    /** Reads and analyses all captures of a folder, one after the other; no spectrum is made, as none is looked at. */
    static Map<String, Double> sums(Path folder) throws IOException, CaptureException {
        List<Path> files;
        try (Stream<Path> entries = Files.list(folder)) {
            files = entries.sorted().toList();
        }
        double count = 0;
        double volts = 0;
        double distortion = 0;
        double clipped = 0;
        for (Path file : files) {
            Capture capture = CaptureFile.read(file, SCALE);
            for (Waveform channel : capture.channels()) {
                ChannelAnalysis analysis = WaveformAnalyzer.analyze(channel, SETTINGS);
                count++;
                volts += analysis.outputVoltsRms();
                distortion += analysis.thdFRatio();
                clipped += analysis.clipping().clipped() ? 1 : 0;
            }
        }
        return Map.of("count", count, "voltsSum", volts, "thdSum", distortion, "clipped", clipped);
    }
}
