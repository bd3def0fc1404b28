// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

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
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Rating;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Spectrum;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.Window;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/**
 * What is left at the output with silent inputs, from 20 Hz to 20 kHz, without and with A-weighting, and how far it lies below 1 W
 * into the nominal load and below the rated power. The recorder's own noise is in it.
 */
@Component
public final class ResidualNoise implements Measurement {
    private static final Messages TEXTS = Messages.of(ResidualNoise.class);

    private static final double LOW_HZ = 20;
    private static final double HIGH_HZ = 20_000;

    private static FigureInfo noiseFigure() {
        return new FigureInfo("noise", TEXTS.text("noise.figure.noise"), Unit.VOLT, true);
    }

    private static FigureInfo weightedFigure() {
        return new FigureInfo("weightedNoise", TEXTS.text("noise.figure.weightedNoise"), Unit.VOLT, true);
    }

    private static FigureInfo ratioFigure() {
        return new FigureInfo("signalToNoise", TEXTS.text("noise.figure.signalToNoise"), Unit.DECIBEL, true);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.residual-noise",
                "1.0.0",
                TEXTS.text("noise.name"),
                TEXTS.text("noise.summary"),
                List.of(
                        "IEC 61672-1, A-weighting in its closed form",
                        "ANSI/CTA-2006, signal-to-noise ratio re 1 W (2.000 V on 4 ohm)"),
                Set.of(Ability.WAVEFORM),
                List.of(SearchSettings.settle(), SearchSettings.seconds(0.7)),
                List.of(noiseFigure(), weightedFigure(), ratioFigure()),
                Duration.ofMinutes(3));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forLoad(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            Acquisition quiet = run.record(new Feed.Silence(), settings.number("recordSeconds"));
            List<Figure> figures = new ArrayList<>();
            List<String> names = BenchRun.names(
                    subject.step().mode(),
                    Math.min(subject.channelCount(), quiet.output().channels().size()));
            for (int channel = 0; channel < names.size(); channel++) {
                add(subject, quiet.output().channels().get(channel), names.get(channel), figures);
            }
            return new MeasurementResult(figures, Optional.empty(), List.of());
        });
    }

    private static void add(Subject subject, Waveform waveform, String name, List<Figure> figures)
            throws MeasurementException {
        double highHz = Math.min(HIGH_HZ, waveform.sampleRateHz() / 2);
        Spectrum spectrum = Spectrum.of(waveform, Window.HANN);
        double plain = spectrum.bandVoltsRms(LOW_HZ, highHz, FrequencyWeighting.Z);
        double weighted = spectrum.bandVoltsRms(LOW_HZ, highHz, FrequencyWeighting.A);
        if (weighted <= 0) {
            throw Faults.of("noNoise", name);
        }
        figures.add(Figure.of(noiseFigure(), plain).ofChannel(name));
        figures.add(Figure.of(weightedFigure(), weighted).ofChannel(name));
        double nominalOhms = subject.load().nominalOhms();
        figures.add(ratio(Math.sqrt(nominalOhms), weighted, name, "1 W"));
        Optional<Rating> rating = ExpectedPower.rating(subject);
        if (rating.isPresent()) {
            figures.add(ratio(Math.sqrt(rating.get().powerWatts() * nominalOhms), weighted, name, "rated power"));
        }
    }

    private static Figure ratio(double referenceVolts, double noiseVolts, String name, String at) {
        return Figure.of(ratioFigure(), 20 * Math.log10(referenceVolts / noiseVolts))
                .ofChannel(name)
                .at(at);
    }
}
