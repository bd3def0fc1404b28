// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
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
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/** Power at the step's end point for several frequencies, each by a search of its own. */
@Component
public final class PowerAgainstFrequency implements Measurement {
    private static final Messages TEXTS = Messages.of(PowerAgainstFrequency.class);

    /** Above this no third harmonic lies in the band up to 20 kHz, and a symmetric clipper would look clean. */
    private static final double HIGHEST_DISTORTION_HZ = 20_000 / 3.0;

    private static FigureInfo powerFigure() {
        return new FigureInfo("power", TEXTS.text("againstFrequency.figure.power"), Unit.WATT, true);
    }

    private static List<Setting> settings() {
        List<Setting> all = new ArrayList<>();
        all.add(ToneSettings.frequencies("20, 40, 100, 400, 1000, 4000, 6300"));
        all.addAll(SearchSettings.all());
        return List.copyOf(all);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.power-against-frequency",
                "1.0.0",
                TEXTS.text("againstFrequency.name"),
                TEXTS.text("againstFrequency.summary"),
                List.of("IEC 60268-3, distortion-limited output power and power bandwidth (the idea; clause text from"
                        + " memory)"),
                Set.of(Ability.TONE, Ability.WAVEFORM),
                settings(),
                List.of(powerFigure()),
                Duration.ofMinutes(60));
    }

    @Override
    public Readiness readiness(Subject subject) {
        if (subject.step().endPoint() instanceof EndPoint.FixedLevel) {
            return new Readiness.NotYet(
                    TEXTS.text("againstFrequency.fixedLevel"), TEXTS.text("readiness.fixedLevel.remedy"));
        }
        return StandardReadiness.forLoad(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        List<Double> frequenciesHz = ToneSettings.frequenciesHz(settings);
        List<String> names = BenchRun.names(subject.step().mode(), subject.channelCount());
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            List<Figure> figures = new ArrayList<>();
            Set<String> notes = new LinkedHashSet<>();
            for (double frequencyHz : frequenciesHz) {
                String at = ToneSettings.at(frequencyHz);
                if (frequencyHz > HIGHEST_DISTORTION_HZ) {
                    notes.add("At " + at
                            + " no third harmonic lies below 20 kHz, so no distortion can be found; it was left out.");
                    continue;
                }
                Stimulus tone = new Stimulus.ContinuousSine(frequencyHz);
                LevelSearch search = new LevelSearch(
                        run,
                        subject,
                        tone,
                        subject.step().endPoint(),
                        SearchSettings.limits(settings, tone),
                        powerFigure());
                search.run();
                search.notes().forEach(note -> notes.add(at + ": " + note));
                BudgetSetting setting =
                        BudgetSetting.of(subject.project(), tone, search.facts(), BudgetSetting.NO_SHARING);
                for (int channel = 0; channel < names.size(); channel++) {
                    EndPointResult result = EndPointFinder.find(
                            search.channels().get(channel), subject.step().endPoint());
                    if (result.outcome() != EndPointOutcome.REACHED) {
                        notes.add("At " + at + " channel " + names.get(channel)
                                + " did not meet the end point; its power is that of the highest or lowest level.");
                    }
                    Figure figure = PowerFigures.of(powerFigure(), subject, channel, result, setting)
                            .at(at);
                    progress.live(figure);
                    figures.add(figure);
                }
            }
            if (figures.isEmpty()) {
                throw Faults.of("frequencies.high");
            }
            return new MeasurementResult(figures, Optional.empty(), List.copyOf(notes));
        });
    }
}
