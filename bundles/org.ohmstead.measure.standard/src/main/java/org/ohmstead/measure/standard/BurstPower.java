// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
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
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;
import org.osgi.service.component.annotations.ReferencePolicyOption;

/**
 * Power inside tone bursts at the step's end point, and dynamic headroom: 10 log10 of it over the rated continuous power, and over the
 * continuous power as measured where there is no rating or it is asked for. When the bursts are those of the step itself, it gives the
 * reading of power that a burst rating is judged by, too.
 */
@Component
public final class BurstPower implements Measurement {
    private static final Messages TEXTS = Messages.of(BurstPower.class);

    private static FigureInfo burstFigure() {
        return new FigureInfo("burstPower", TEXTS.text("burst.figure.burstPower"), Unit.WATT, true);
    }

    private static FigureInfo continuousFigure() {
        return new FigureInfo("continuousPower", TEXTS.text("burst.figure.continuousPower"), Unit.WATT, true);
    }

    private static FigureInfo headroomFigure() {
        return new FigureInfo("headroom", TEXTS.text("burst.figure.headroom"), Unit.DECIBEL, true);
    }

    private static List<Setting> settings() {
        List<Setting> all = new ArrayList<>(List.of(
                new Setting.Number(
                        "onSeconds",
                        TEXTS.text("burst.onSeconds"),
                        TEXTS.text("burst.onSeconds.help"),
                        Unit.SECOND,
                        0.02,
                        0.001,
                        10),
                new Setting.Number(
                        "periodSeconds",
                        TEXTS.text("burst.periodSeconds"),
                        TEXTS.text("burst.periodSeconds.help"),
                        Unit.SECOND,
                        0.5,
                        0.002,
                        20),
                new Setting.Number(
                        "lowLevelDb",
                        TEXTS.text("burst.lowLevelDb"),
                        TEXTS.text("burst.lowLevelDb.help"),
                        Unit.DECIBEL,
                        -20,
                        -200,
                        0),
                new Setting.Flag(
                        "measureContinuous",
                        TEXTS.text("burst.measureContinuous"),
                        TEXTS.text("burst.measureContinuous.help"),
                        false)));
        all.addAll(SearchSettings.all());
        return List.copyOf(all);
    }

    private final AtomicReference<PartSharing> sharing = new AtomicReference<>(BudgetSetting.NO_SHARING);

    /** Takes what tells how power falls on the parts of a load, so that their warming is accounted for. */
    @Reference(
            service = PartSharing.class,
            cardinality = ReferenceCardinality.OPTIONAL,
            policy = ReferencePolicy.DYNAMIC,
            policyOption = ReferencePolicyOption.GREEDY)
    public void bindSharing(PartSharing came) {
        sharing.set(Objects.requireNonNull(came, "came"));
    }

    /** Lets it go. */
    public void unbindSharing(PartSharing gone) {
        sharing.compareAndSet(gone, BudgetSetting.NO_SHARING);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.burst-power",
                "1.0.0",
                TEXTS.text("burst.name"),
                TEXTS.text("burst.summary"),
                List.of(
                        "CTA-490-A (IHF-A-202), dynamic headroom; timing from memory",
                        "ANSI/CTA-2006, dynamic power; timing from memory"),
                Set.of(Ability.TONE, Ability.TONE_BURST, Ability.WAVEFORM),
                settings(),
                List.of(burstFigure(), continuousFigure(), headroomFigure()),
                Duration.ofMinutes(20));
    }

    @Override
    public Readiness readiness(Subject subject) {
        if (subject.step().endPoint() instanceof EndPoint.FixedLevel) {
            return new Readiness.NotYet(TEXTS.text("burst.fixedLevel"), TEXTS.text("readiness.fixedLevel.remedy"));
        }
        return StandardReadiness.forLoad(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        if (settings.number("periodSeconds") <= settings.number("onSeconds")) {
            throw Faults.of("burst.long");
        }
        double frequencyHz = subject.step().stimulus().frequencyHz();
        Stimulus burst = new Stimulus.ToneBurst(
                frequencyHz,
                settings.number("onSeconds"),
                settings.number("periodSeconds"),
                settings.number("lowLevelDb"));
        EndPoint endPoint = subject.step().endPoint() instanceof EndPoint.FixedLevel
                ? new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F)
                : subject.step().endPoint();
        Optional<Rating> rating = ExpectedPower.ratingAtSupply(subject);
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            Set<String> notes = new LinkedHashSet<>();
            List<Figure> figures = new ArrayList<>();
            LevelSearch loud = search(run, subject, burst, endPoint, settings, notes);
            List<EndPointResult> inBurst = results(loud, endPoint, notes);
            BudgetSetting setting = BudgetSetting.of(subject.project(), burst, loud.facts(), sharing.get());
            List<String> names = BenchRun.names(subject.step().mode(), inBurst.size());
            for (int channel = 0; channel < names.size(); channel++) {
                String name = names.get(channel);
                figures.add(PowerFigures.of(burstFigure(), subject, channel, inBurst.get(channel), setting));
                if (rating.isPresent()) {
                    figures.add(headroom(inBurst.get(channel), rating.get().powerWatts(), name, "re rated power"));
                }
            }
            if (rating.isEmpty() || settings.flag("measureContinuous")) {
                Stimulus tone = new Stimulus.ContinuousSine(frequencyHz);
                LevelSearch lasting = search(run, subject, tone, endPoint, settings, notes);
                List<EndPointResult> steady = results(lasting, endPoint, notes);
                BudgetSetting toneSetting = BudgetSetting.of(subject.project(), tone, lasting.facts(), sharing.get());
                for (int channel = 0; channel < names.size(); channel++) {
                    double watts = steady.get(channel).powerWatts();
                    figures.add(
                            PowerFigures.of(continuousFigure(), subject, channel, steady.get(channel), toneSetting));
                    figures.add(headroom(inBurst.get(channel), watts, names.get(channel), "re measured power"));
                }
            }
            // Bursts as the step wants them are what its rating is judged by.
            Optional<Reading> reading = burst.equals(subject.step().stimulus())
                    ? Optional.of(PowerReadings.ofSearch(subject, loud, info(), sharing.get()))
                    : Optional.empty();
            return new MeasurementResult(figures, reading, List.copyOf(notes));
        });
    }

    private static Figure headroom(EndPointResult burst, double watts, String name, String at) {
        return Figure.of(headroomFigure(), 10 * Math.log10(burst.powerWatts() / watts))
                .ofChannel(name)
                .at(at);
    }

    private static LevelSearch search(
            BenchRun run, Subject subject, Stimulus stimulus, EndPoint endPoint, Settings settings, Set<String> notes)
            throws MeasurementException, InterruptedException {
        LevelSearch search = new LevelSearch(
                run,
                subject,
                stimulus,
                endPoint,
                SearchSettings.limits(settings, stimulus),
                stimulus instanceof Stimulus.ToneBurst ? burstFigure() : continuousFigure());
        search.run();
        notes.addAll(search.notes());
        return search;
    }

    private static List<EndPointResult> results(LevelSearch search, EndPoint endPoint, Set<String> notes) {
        List<EndPointResult> results = search.channels().stream()
                .map(levels -> EndPointFinder.find(levels, endPoint))
                .toList();
        if (results.stream().anyMatch(result -> result.outcome() != EndPointOutcome.REACHED)) {
            notes.add("The end point was not met in every channel; a power there is that of the highest or lowest"
                    + " level.");
        }
        return results;
    }
}
