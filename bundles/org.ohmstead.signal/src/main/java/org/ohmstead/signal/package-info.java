// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Waveforms of bench captures: read and write them, and find out what they show. A capture is read from a WAV or CSV
 * file in volts, and each channel is analysed for power, distortion, noise, clipping and tone bursts; the parts that
 * this rests on (sine fit, spectrum, windows, frequency weighting) are there on their own as well.
 *
 * <pre>{@code
 * Capture capture = CaptureFile.read(Path.of("left.wav"), new double[] {40.0});
 * AnalysisSettings settings = AnalysisSettings.forResistance(4.0).withFrequencyHz(1000);
 * ChannelAnalysis left = WaveformAnalyzer.analyze(capture.channels().get(0), settings);
 * double watts = left.powerWatts();
 * double distortion = left.thdFRatio();
 * }</pre>
 */
package org.ohmstead.signal;
