// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.sample;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.Unit;
import org.osgi.service.component.annotations.Component;

/**
 * Hum: what the output has of the mains' frequency and its harmonics while nothing is fed. Each is fitted by a sine of known frequency over
 * whole cycles of the mains, so that they do not leak into one another; together they are the root of the sum of their squares.
 */
@Component
public final class Hum implements Measurement {
    private static final FigureInfo HUM = new FigureInfo("hum", "hum", Unit.VOLT, true);
    private static final FigureInfo HARMONIC = new FigureInfo("harmonic", "part of the hum", Unit.VOLT, true);
    private static final MeasurementInfo INFO = new MeasurementInfo(
            "org.ohmstead.sample.hum",
            "1.0.0",
            "Hum",
            "Records the output with silent inputs, and tells what it has of the mains' frequency and its harmonics.",
            List.of("IEEE Std 1057, three-parameter sine fit"),
            Set.of(Ability.WAVEFORM),
            List.of(
                    new Setting.Choice("mainsHz", "mains", "The mains' frequency in hertz.", List.of("50", "60"), "50"),
                    new Setting.Count(
                            "harmonics", "harmonics", "How many are looked at, with the mains itself.", 5, 1, 20),
                    new Setting.Number("seconds", "recording", "How long is recorded.", Unit.SECOND, 1, 0.1, 10)),
            List.of(HUM, HARMONIC),
            Duration.ofMinutes(1));

    @Override
    public MeasurementInfo info() {
        return INFO;
    }

    @Override
    public Readiness readiness(Subject subject) {
        return new Readiness.Ready();
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        progress.checkpoint();
        progress.at(0, "recording the output with silent inputs");
        bench.feed(new Feed.Silence());
        Acquisition quiet = bench.acquire(settings.number("seconds"));
        progress.recorded(quiet);
        progress.checkpoint();
        double mainsHz = Double.parseDouble(settings.choice("mainsHz"));
        List<Figure> figures = new ArrayList<>();
        for (int channel = 0; channel < quiet.output().channels().size(); channel++) {
            Waveform output = wholeCycles(quiet.output().channels().get(channel), mainsHz);
            add(figures, output, mainsHz, settings.count("harmonics"), String.valueOf((char) ('A' + channel)));
        }
        return new MeasurementResult(figures, Optional.empty(), List.of());
    }

    private static Waveform wholeCycles(Waveform waveform, double mainsHz) throws MeasurementException {
        double cycleSamples = waveform.sampleRateHz() / mainsHz;
        long cycles = (long) (waveform.size() / cycleSamples);
        if (cycles < 1) {
            throw new MeasurementException("The recording is shorter than a cycle of the mains. Record for longer.");
        }
        return waveform.slice(0, (int) Math.min(waveform.size(), Math.round(cycles * cycleSamples)));
    }

    private static void add(List<Figure> figures, Waveform output, double mainsHz, int harmonics, String channel) {
        double squares = 0;
        double[] volts = output.toArray();
        for (int harmonic = 1; harmonic <= harmonics; harmonic++) {
            double frequencyHz = harmonic * mainsHz;
            if (frequencyHz < output.sampleRateHz() / 2) {
                SineFit fit = SineFit.threeParameter(volts, output.sampleRateHz(), frequencyHz);
                double voltsRms = fit.amplitudeVolts() / Math.sqrt(2);
                squares += voltsRms * voltsRms;
                figures.add(Figure.of(HARMONIC, voltsRms).ofChannel(channel).at(Math.round(frequencyHz) + " Hz"));
            }
        }
        figures.add(Figure.of(HUM, Math.sqrt(squares)).ofChannel(channel));
    }
}
