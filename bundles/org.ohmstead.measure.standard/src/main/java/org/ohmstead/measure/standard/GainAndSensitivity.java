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
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Rating;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/** Volts gain, 20 log10(V_out / V_in), and the input volts for the rated power and for 1 W, sqrt(P R) / gain. */
@Component
public final class GainAndSensitivity implements Measurement {
    private static final Messages TEXTS = Messages.of(GainAndSensitivity.class);

    private static FigureInfo gainFigure() {
        return new FigureInfo("gain", TEXTS.text("gain.figure.gain"), Unit.DECIBEL, true);
    }

    private static FigureInfo sensitivityFigure() {
        return new FigureInfo("sensitivity", TEXTS.text("gain.figure.sensitivity"), Unit.VOLT, true);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.gain",
                "1.0.0",
                TEXTS.text("gain.name"),
                TEXTS.text("gain.summary"),
                List.of(
                        "IEC 60268-3, gain and rated source voltage (the idea; clause text from memory)",
                        "IEEE Std 1057, sine fit"),
                Set.of(Ability.TONE, Ability.WAVEFORM, Ability.INPUT_WAVEFORM),
                ToneSettings.with(ToneSettings.frequency()),
                List.of(gainFigure(), sensitivityFigure()),
                Duration.ofMinutes(2));
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
            ToneTaker taker = new ToneTaker(run, subject, settings.number("recordSeconds"));
            double frequencyHz = settings.number("frequencyHz");
            double driveDb = taker.driveDbFor(settings.number("watts"), frequencyHz, settings.number("startDb"));
            return result(subject, taker.take(frequencyHz, driveDb));
        });
    }

    private static MeasurementResult result(Subject subject, ToneTaker.Taken taken) throws MeasurementException {
        if (taken.inputFits().isEmpty()) {
            throw Faults.of("noInput");
        }
        Optional<Rating> rating = ExpectedPower.rating(subject);
        List<Figure> figures = new ArrayList<>();
        List<String> names = BenchRun.names(subject.step().mode(), subject.channelCount());
        for (int channel = 0; channel < names.size(); channel++) {
            double gainRatio = taken.gainRatio(channel);
            double ohms = subject.load().branches().get(channel).ohms();
            Figure gain = Figure.of(gainFigure(), 20 * Math.log10(gainRatio)).ofChannel(names.get(channel));
            Optional<Meter> meter = subject.project().bench().meterFor(MeterQuantity.OUTPUT_VOLTS);
            if (meter.isPresent()) {
                double share =
                        meter.get().accuracy().standardUncertainty(taken.voltsRms(channel)) / taken.voltsRms(channel);
                gain = gain.withStandardUncertainty(20 / Math.log(10) * share);
            }
            figures.add(gain);
            figures.add(Figure.of(sensitivityFigure(), Math.sqrt(ohms) / gainRatio)
                    .ofChannel(names.get(channel))
                    .at("1 W"));
            if (rating.isPresent()) {
                figures.add(
                        Figure.of(sensitivityFigure(), Math.sqrt(rating.get().powerWatts() * ohms) / gainRatio)
                                .ofChannel(names.get(channel))
                                .at("rated power"));
            }
        }
        List<String> notes = rating.isPresent()
                ? List.of()
                : List.of("The amplifier has no rating for this mode and load, so no sensitivity for rated power is"
                        + " given.");
        return new MeasurementResult(figures, Optional.empty(), notes);
    }
}
