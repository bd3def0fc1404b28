// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.model.Range;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** The output as a person hands it in: as a file, or as volts and distortion of which a wave is made that has both. */
final class TypedOutput {
    private static final Messages TEXTS = Messages.of(TypedOutput.class);

    private static final double SAMPLE_RATE_HZ = 48_000;
    private static final double HIGHEST_VOLTS = 2000;
    private static final double HIGHEST_PERCENT = 48;

    private final Subject subject;
    private final OperatorPort operator;
    private final Asking asking;

    /** Asks for a value until it is usable. */
    interface Asking {
        double ask(Said what, Unit unit, Range possible, Range likely)
                throws MeasurementException, InterruptedException;
    }

    /** A capture with its range. */
    record Handed(Capture capture, double voltsPerFullScale) {}

    TypedOutput(Subject subject, OperatorPort operator, Asking asking) {
        this.subject = subject;
        this.operator = operator;
        this.asking = asking;
    }

    Handed fromFile(double seconds) throws MeasurementException, InterruptedException {
        String name = operator.askText(TEXTS.text("ask.record", String.valueOf(seconds)))
                .orElseThrow(TypedBench::cancelled);
        double scale = asking.ask(
                Said.of(TEXTS, "value.fullScale"), Unit.VOLT, new Range(1e-6, 1e5), new Range(0.5, HIGHEST_VOLTS));
        try {
            Capture capture = CaptureFile.read(Path.of(name.strip()), new double[] {scale});
            if (capture.channels().size() < subject.channelCount()) {
                throw Faults.of("fewChannels", name, capture.channels().size(), subject.channelCount());
            }
            return new Handed(capture, scale);
        } catch (CaptureException e) {
            throw Faults.because(e, "inFile", name, Said.by(e));
        } catch (InvalidPathException e) {
            throw Faults.because(e, "noFile", name);
        }
    }

    Handed fromReadings(Feed feed, double seconds, TypedForecast forecast)
            throws MeasurementException, InterruptedException {
        if (!(feed instanceof Feed.Tone tone)) {
            throw Faults.of("steadyOnly");
        }
        List<Waveform> waves = new ArrayList<>();
        double highest = 0;
        int size = (int) Math.ceil(Math.max(seconds, 12 / tone.frequencyHz()) * SAMPLE_RATE_HZ);
        for (int channel = 0; channel < subject.channelCount(); channel++) {
            String of = subject.channelCount() == 1 ? "" : ".channel";
            String name = TypedBench.channelName(channel);
            double likely = forecast.outputVoltsRms(channel);
            double rms = asking.ask(
                    Said.of(TEXTS, "value.output" + of, name),
                    Unit.VOLT,
                    new Range(0, HIGHEST_VOLTS),
                    new Range(0.3 * likely, Math.min(HIGHEST_VOLTS, 2 * likely + 0.01)));
            double percent = asking.ask(
                    Said.of(TEXTS, "value.distortion" + of, name),
                    Unit.PERCENT,
                    new Range(0, HIGHEST_PERCENT),
                    new Range(0, HIGHEST_PERCENT));
            waves.add(wave(size, tone.frequencyHz(), rms, percent / 100));
            highest = Math.max(highest, rms);
        }
        double fullScale = Math.max(1e-3, 3 * highest);
        return new Handed(
                new Capture(waves, "typed in", "a wave made of volts RMS and THD that were typed in"), fullScale);
    }

    /** A sine with a third harmonic: its RMS and its harmonics over the fundamental are those that were read. */
    private static Waveform wave(int size, double frequencyHz, double rms, double thdRatio) {
        double fundamental = rms * Math.sqrt(2) / Math.sqrt(1 + thdRatio * thdRatio);
        double[] samples = new double[size];
        for (int i = 0; i < size; i++) {
            double phase = 2 * Math.PI * frequencyHz * i / SAMPLE_RATE_HZ;
            samples[i] = fundamental * (Math.sin(phase) + thdRatio * Math.sin(3 * phase));
        }
        return Waveform.of(SAMPLE_RATE_HZ, samples);
    }
}
