// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;
import org.osgi.service.component.annotations.Component;

/** Gain over frequency relative to that at a reference frequency, and where it has fallen by 3 dB. */
@Component
public final class FrequencyResponse implements Measurement {
    private static final Messages TEXTS = Messages.of(FrequencyResponse.class);

    private static final double CORNER_DB = -10 * Math.log10(2);

    private static FigureInfo responseFigure() {
        return new FigureInfo("response", TEXTS.text("response.figure.response"), Unit.DECIBEL, true);
    }

    private static FigureInfo lowFigure() {
        return new FigureInfo("lowCorner", TEXTS.text("response.figure.lowCorner"), Unit.HERTZ, true);
    }

    private static FigureInfo highFigure() {
        return new FigureInfo("highCorner", TEXTS.text("response.figure.highCorner"), Unit.HERTZ, true);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.frequency-response",
                "1.0.0",
                TEXTS.text("response.name"),
                TEXTS.text("response.summary"),
                List.of(
                        "IEC 60268-3, gain-frequency response (the idea; clause text from memory)",
                        "IEEE Std 1057, sine fit"),
                Set.of(Ability.TONE, Ability.WAVEFORM),
                ToneSettings.with(
                        new Setting.Number(
                                "lowestHz",
                                TEXTS.text("response.lowestHz"),
                                TEXTS.text("response.lowestHz.help"),
                                Unit.HERTZ,
                                20,
                                1,
                                1000),
                        new Setting.Number(
                                "highestHz",
                                TEXTS.text("response.highestHz"),
                                TEXTS.text("response.highestHz.help"),
                                Unit.HERTZ,
                                20_000,
                                1000,
                                80_000),
                        new Setting.Number(
                                "referenceHz",
                                TEXTS.text("response.referenceHz"),
                                TEXTS.text("response.referenceHz.help"),
                                Unit.HERTZ,
                                1000,
                                1,
                                80_000),
                        new Setting.Count(
                                "pointsPerOctave",
                                TEXTS.text("response.pointsPerOctave"),
                                TEXTS.text("response.pointsPerOctave.help"),
                                3,
                                1,
                                24)),
                List.of(responseFigure(), lowFigure(), highFigure()),
                Duration.ofMinutes(20));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forLoad(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        List<Double> frequenciesHz = frequenciesHz(settings);
        List<String> names = BenchRun.names(subject.step().mode(), subject.channelCount());
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            ToneTaker taker = new ToneTaker(run, subject, settings.number("recordSeconds"));
            double referenceHz = settings.number("referenceHz");
            double driveDb = taker.driveDbFor(settings.number("watts"), referenceHz, settings.number("startDb"));
            ToneTaker.Taken reference = taker.take(referenceHz, driveDb);
            List<Figure> figures = new ArrayList<>();
            double[][] responses = new double[names.size()][frequenciesHz.size()];
            for (int i = 0; i < frequenciesHz.size(); i++) {
                String at = ToneSettings.at(frequenciesHz.get(i));
                progress.at(i / (double) frequenciesHz.size(), at);
                ToneTaker.Taken taken = taker.take(frequenciesHz.get(i), driveDb);
                for (int channel = 0; channel < names.size(); channel++) {
                    responses[channel][i] = 20 * Math.log10(taken.gainRatio(channel) / reference.gainRatio(channel));
                    Figure figure = Figure.of(responseFigure(), responses[channel][i])
                            .ofChannel(names.get(channel))
                            .at(at);
                    progress.live(figure);
                    figures.add(figure);
                }
            }
            for (int channel = 0; channel < names.size(); channel++) {
                addCorners(figures, names.get(channel), frequenciesHz, responses[channel], referenceHz);
            }
            List<String> notes = reference.inputFits().isEmpty()
                    ? List.of("The bench does not record the input; the source is taken to be flat.")
                    : List.of();
            return new MeasurementResult(figures, Optional.empty(), notes);
        });
    }

    private static List<Double> frequenciesHz(Settings settings) throws MeasurementException {
        double lowestHz = settings.number("lowestHz");
        double highestHz = settings.number("highestHz");
        if (highestHz <= lowestHz) {
            throw Faults.of("frequencies.order", Said.number("%.5g", highestHz), Said.number("%.5g", lowestHz));
        }
        int steps = Math.max(
                1, (int) Math.round(Math.log(highestHz / lowestHz) / Math.log(2) * settings.count("pointsPerOctave")));
        List<Double> frequenciesHz = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            frequenciesHz.add(lowestHz * Math.pow(highestHz / lowestHz, i / (double) steps));
        }
        return frequenciesHz;
    }

    private static void addCorners(
            List<Figure> figures, String name, List<Double> frequenciesHz, double[] responseDb, double referenceHz) {
        int middle = 0;
        while (middle < responseDb.length - 1 && frequenciesHz.get(middle) < referenceHz) {
            middle++;
        }
        corner(frequenciesHz, responseDb, middle, -1)
                .ifPresent(hz -> figures.add(Figure.of(lowFigure(), hz).ofChannel(name)));
        corner(frequenciesHz, responseDb, Math.max(0, middle - 1), 1)
                .ifPresent(hz -> figures.add(Figure.of(highFigure(), hz).ofChannel(name)));
    }

    /** The first frequency, going one way from the middle, at which it has fallen by 3 dB, on a logarithmic scale. */
    private static OptionalDouble corner(List<Double> frequenciesHz, double[] responseDb, int middle, int direction) {
        for (int i = middle; i + direction >= 0 && i + direction < responseDb.length; i += direction) {
            int next = i + direction;
            if (responseDb[i] >= CORNER_DB && responseDb[next] < CORNER_DB) {
                double share = (CORNER_DB - responseDb[i]) / (responseDb[next] - responseDb[i]);
                return OptionalDouble.of(
                        frequenciesHz.get(i) * Math.pow(frequenciesHz.get(next) / frequenciesHz.get(i), share));
            }
        }
        return OptionalDouble.empty();
    }
}
