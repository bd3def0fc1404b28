// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
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
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/** How much louder or softer each channel is than the first, 20 log10(gain / gain of A), at several frequencies. */
@Component
public final class ChannelMatch implements Measurement {
    private static final Messages TEXTS = Messages.of(ChannelMatch.class);

    private static FigureInfo differenceFigure() {
        return new FigureInfo("difference", TEXTS.text("match.figure.difference"), Unit.DECIBEL, true);
    }

    private static FigureInfo largestFigure() {
        return new FigureInfo("largest", TEXTS.text("match.figure.largest"), Unit.DECIBEL, false);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.channel-match",
                "1.0.0",
                TEXTS.text("match.name"),
                TEXTS.text("match.summary"),
                List.of("IEC 60268-3, gain difference between channels (the idea; clause text from memory)"),
                Set.of(Ability.TONE, Ability.WAVEFORM),
                ToneSettings.with(ToneSettings.frequencies("100, 1000, 10000")),
                List.of(differenceFigure(), largestFigure()),
                Duration.ofMinutes(5));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forSeveralChannels(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        List<Double> frequenciesHz = ToneSettings.frequenciesHz(settings);
        List<String> names = BenchRun.names(subject.step().mode(), subject.channelCount());
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            ToneTaker taker = new ToneTaker(run, subject, settings.number("recordSeconds"));
            List<Figure> figures = new ArrayList<>();
            double largestDb = 0;
            for (double frequencyHz : frequenciesHz) {
                progress.at(
                        figures.size() / (double) (names.size() * frequenciesHz.size()), ToneSettings.at(frequencyHz));
                double driveDb = taker.driveDbFor(settings.number("watts"), frequencyHz, settings.number("startDb"));
                ToneTaker.Taken taken = taker.take(frequencyHz, driveDb);
                for (int channel = 1; channel < names.size(); channel++) {
                    double differenceDb = 20 * Math.log10(taken.gainRatio(channel) / taken.gainRatio(0));
                    figures.add(Figure.of(differenceFigure(), differenceDb)
                            .ofChannel(names.get(channel))
                            .at(ToneSettings.at(frequencyHz)));
                    largestDb = Math.max(largestDb, Math.abs(differenceDb));
                }
            }
            figures.add(Figure.of(largestFigure(), largestDb));
            return new MeasurementResult(figures, Optional.empty(), List.of());
        });
    }
}
