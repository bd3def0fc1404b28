// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
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
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/**
 * Output impedance by two loads, Z = (V_2 - V_1) / (V_1 / R_1 - V_2 / R_2), and the damping factor R_1 / Z. It is right where the
 * impedance is a resistance. Only the ratio of both volts counts, so the recorder's gain error falls out; what is left of the
 * uncertainty comes from the scatter of the volts and from both loads.
 */
@Component
public final class OutputImpedance implements Measurement {
    private static final Messages TEXTS = Messages.of(OutputImpedance.class);

    private static FigureInfo ohmsFigure() {
        return new FigureInfo("outputOhms", TEXTS.text("impedance.figure.outputOhms"), Unit.OHM, true);
    }

    private static FigureInfo dampingFigure() {
        return new FigureInfo("dampingFactor", TEXTS.text("impedance.figure.dampingFactor"), Unit.NONE, true);
    }

    private static final double LEAST_LOAD_RATIO = 1.2;

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.output-impedance",
                "1.0.0",
                TEXTS.text("impedance.name"),
                TEXTS.text("impedance.summary"),
                List.of(
                        "IEC 60268-3, output source impedance (the idea; clause text from memory)",
                        "GUM (JCGM 100:2008), equation 10"),
                Set.of(Ability.TONE, Ability.WAVEFORM, Ability.SELECT_LOAD),
                ToneSettings.with(
                        ToneSettings.frequency(),
                        new Setting.Text(
                                "secondLoad",
                                TEXTS.text("impedance.secondLoad"),
                                TEXTS.text("impedance.secondLoad.help"),
                                ""),
                        new Setting.Count(
                                "repeats",
                                TEXTS.text("impedance.repeats"),
                                TEXTS.text("impedance.repeats.help"),
                                3,
                                2,
                                50)),
                List.of(ohmsFigure(), dampingFigure()),
                Duration.ofMinutes(10));
    }

    @Override
    public Readiness readiness(Subject subject) {
        if (second(subject, "").isEmpty()) {
            return new Readiness.NotYet(
                    TEXTS.text("impedance.noHigherLoad", subject.load().id()),
                    TEXTS.text("impedance.noHigherLoad.remedy"));
        }
        return StandardReadiness.forLoad(subject);
    }

    private static Optional<BenchLoad> second(Subject subject, String id) {
        return subject.project().loads().stream()
                .filter(load -> id.isBlank() || load.id().equals(id))
                .filter(load -> load.branches().size() >= subject.channelCount())
                .filter(load -> load.branches().get(0).ohms()
                        >= LEAST_LOAD_RATIO * subject.load().branches().get(0).ohms())
                .max(Comparator.comparingDouble(BenchLoad::nominalOhms));
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        String id = settings.text("secondLoad");
        BenchLoad higher = second(subject, id).orElseThrow(() -> Faults.of("secondLoad", id));
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            ToneTaker taker = new ToneTaker(run, subject, settings.number("recordSeconds"));
            double frequencyHz = settings.number("frequencyHz");
            double driveDb = taker.driveDbFor(settings.number("watts"), frequencyHz, settings.number("startDb"));
            progress.at(0.2, TEXTS.text("impedance.progress.first"));
            List<ToneTaker.Taken> low = repeat(taker, settings, driveDb);
            bench.connect(subject.step().mode(), higher);
            progress.at(0.6, TEXTS.text("impedance.progress.second"));
            List<ToneTaker.Taken> high = repeat(taker, settings, driveDb);
            bench.connect(subject.step().mode(), subject.load());
            return result(subject, higher, low, high);
        });
    }

    private static List<ToneTaker.Taken> repeat(ToneTaker taker, Settings settings, double driveDb)
            throws MeasurementException, InterruptedException {
        List<ToneTaker.Taken> all = new ArrayList<>();
        for (int i = 0; i < settings.count("repeats"); i++) {
            all.add(taker.take(settings.number("frequencyHz"), driveDb));
        }
        return all;
    }

    private static MeasurementResult result(
            Subject subject, BenchLoad higher, List<ToneTaker.Taken> low, List<ToneTaker.Taken> high) {
        List<Figure> figures = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        List<String> names = BenchRun.names(subject.step().mode(), subject.channelCount());
        for (int channel = 0; channel < names.size(); channel++) {
            LoadBranch one = subject.load().branches().get(channel);
            LoadBranch two = higher.branches().get(channel);
            Mean lowVolts = Mean.of(low, channel);
            Mean highVolts = Mean.of(high, channel);
            double ratio = highVolts.gainRatio() / lowVolts.gainRatio();
            double conductance = 1 / one.ohms() - ratio / two.ohms();
            double ohms = (ratio - 1) / conductance;
            // dZ / dratio = (1 / R_1 - 1 / R_2) / conductance^2; the others follow from Z = (ratio - 1) / conductance.
            double ratioPart = (1 / one.ohms() - 1 / two.ohms())
                    / (conductance * conductance)
                    * ratio
                    * Math.hypot(lowVolts.uncertaintyRatio(), highVolts.uncertaintyRatio());
            double onePart = ohms / conductance * one.standardUncertaintyOhms() / (one.ohms() * one.ohms());
            double twoPart = ohms / conductance * ratio * two.standardUncertaintyOhms() / (two.ohms() * two.ohms());
            double uncertainty = Math.sqrt(ratioPart * ratioPart + onePart * onePart + twoPart * twoPart);
            figures.add(
                    Figure.of(ohmsFigure(), ohms).ofChannel(names.get(channel)).withStandardUncertainty(uncertainty));
            if (ohms > 2 * uncertainty) {
                double damping = one.ohms() / ohms;
                figures.add(Figure.of(dampingFigure(), damping)
                        .ofChannel(names.get(channel))
                        .withStandardUncertainty(damping * uncertainty / ohms));
            } else {
                notes.add(String.format(
                        Locale.ROOT,
                        "Channel %s: %.2g ohm cannot be told from 0 with an uncertainty of %.2g ohm, so no damping"
                                + " factor is given. Use loads further apart or more repeats.",
                        names.get(channel),
                        ohms,
                        uncertainty));
            }
        }
        return new MeasurementResult(figures, Optional.empty(), notes);
    }

    /** The mean of some readings and its relative standard uncertainty by their scatter (GUM 4.2.3). */
    private record Mean(double gainRatio, double uncertaintyRatio) {
        static Mean of(List<ToneTaker.Taken> all, int channel) {
            double mean = all.stream()
                    .mapToDouble(taken -> taken.gainRatio(channel))
                    .average()
                    .orElseThrow();
            double squares = all.stream()
                    .mapToDouble(taken -> Math.pow(taken.gainRatio(channel) - mean, 2))
                    .sum();
            return new Mean(mean, Math.sqrt(squares / (all.size() - 1) / all.size()) / mean);
        }
    }
}
