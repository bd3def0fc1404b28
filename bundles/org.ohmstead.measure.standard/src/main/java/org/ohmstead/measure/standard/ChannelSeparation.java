// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
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

/** How far below a driven channel its tone lies in the others, 20 log10(V_driven / V_other). */
@Component
public final class ChannelSeparation implements Measurement {
    private static final Messages TEXTS = Messages.of(ChannelSeparation.class);

    private static FigureInfo separationFigure() {
        return new FigureInfo("separation", TEXTS.text("separation.figure.separation"), Unit.DECIBEL, true);
    }

    private static FigureInfo worstFigure() {
        return new FigureInfo("worst", TEXTS.text("separation.figure.worst"), Unit.DECIBEL, false);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.channel-separation",
                "1.0.0",
                TEXTS.text("separation.name"),
                TEXTS.text("separation.summary"),
                List.of(
                        "IEC 60268-3, separation between channels (the idea; clause text from memory)",
                        "IEEE Std 1057, sine fit"),
                Set.of(Ability.TONE, Ability.SINGLE_CHANNEL, Ability.WAVEFORM),
                ToneSettings.with(ToneSettings.frequencies("100, 1000, 10000")),
                List.of(separationFigure(), worstFigure()),
                Duration.ofMinutes(10));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forSeveralChannels(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        List<Double> frequenciesHz = ToneSettings.frequenciesHz(settings);
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            ToneTaker taker = new ToneTaker(run, subject, settings.number("recordSeconds"));
            List<Figure> figures = new ArrayList<>();
            Set<String> notes = new LinkedHashSet<>();
            for (double frequencyHz : frequenciesHz) {
                progress.at(0.5, ToneSettings.at(frequencyHz));
                double driveDb = taker.driveDbFor(settings.number("watts"), frequencyHz, settings.number("startDb"));
                for (int driven = 0; driven < subject.channelCount(); driven++) {
                    ToneTaker.Taken taken = taker.take(frequencyHz, driveDb, OptionalInt.of(driven));
                    add(subject, taken, driven, ToneSettings.at(frequencyHz), figures, notes);
                }
            }
            double worstDb = figures.stream().mapToDouble(Figure::value).min().orElseThrow();
            figures.add(Figure.of(worstFigure(), worstDb));
            return new MeasurementResult(figures, Optional.empty(), List.copyOf(notes));
        });
    }

    private static void add(
            Subject subject, ToneTaker.Taken taken, int driven, String at, List<Figure> figures, Set<String> notes) {
        List<String> names = BenchRun.names(subject.step().mode(), subject.channelCount());
        for (int other = 0; other < names.size(); other++) {
            if (other == driven) {
                continue;
            }
            String way = names.get(driven) + " in " + names.get(other) + ", " + at;
            // What cannot be told from noise is taken at the noise: the separation is at least that.
            double volts = Math.max(taken.voltsRms(other), taken.deviationVoltsRms(other));
            if (!taken.sure(other)) {
                notes.add("Of " + way
                        + " nothing can be told from noise; the figure is about the least that the separation can be.");
            }
            double separationDb = 20 * Math.log10(taken.voltsRms(driven) / Math.max(volts, 1e-12));
            figures.add(Figure.of(separationFigure(), separationDb)
                    .ofChannel(names.get(other))
                    .at(way));
        }
    }
}
