// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
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
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/**
 * Output power of all channels over supply power, and what the supply gives, at shares of a full power: that of the rating, or the
 * one that is set. A level whose power is off because the amplifier bends is corrected once.
 */
@Component
public final class EfficiencyAndSupply implements Measurement {
    private static final Messages TEXTS = Messages.of(EfficiencyAndSupply.class);

    private static final int DIGITS = 4;
    private static final double NEAR_RATIO = 0.005;

    private static FigureInfo efficiencyFigure() {
        return new FigureInfo("efficiency", TEXTS.text("efficiency.figure.efficiency"), Unit.PERCENT, false);
    }

    private static FigureInfo ampsFigure() {
        return new FigureInfo("supplyAmps", TEXTS.text("efficiency.figure.supplyAmps"), Unit.AMPERE, false);
    }

    private static FigureInfo outputFigure() {
        return new FigureInfo("outputWatts", TEXTS.text("efficiency.figure.outputWatts"), Unit.WATT, false);
    }

    private static FigureInfo heatFigure() {
        return new FigureInfo("heatWatts", TEXTS.text("efficiency.figure.heatWatts"), Unit.WATT, false);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.efficiency",
                "1.0.0",
                TEXTS.text("efficiency.name"),
                TEXTS.text("efficiency.summary"),
                List.of("16 CFR 432, one eighth of rated power as a working point", "GUM (JCGM 100:2008), equation 10"),
                Set.of(Ability.TONE, Ability.WAVEFORM, Ability.SUPPLY_VOLTS, Ability.SUPPLY_AMPS),
                List.of(
                        ToneSettings.frequency(),
                        new Setting.Text(
                                "shares",
                                TEXTS.text("efficiency.shares"),
                                TEXTS.text("efficiency.shares.help"),
                                "0.125, 0.333, 1"),
                        new Setting.Number(
                                "fullWatts",
                                TEXTS.text("efficiency.fullWatts"),
                                TEXTS.text("efficiency.fullWatts.help"),
                                Unit.WATT,
                                0,
                                0,
                                100_000),
                        new Setting.Number(
                                "startDb",
                                TEXTS.text("efficiency.startDb"),
                                TEXTS.text("efficiency.startDb.help"),
                                Unit.DECIBEL,
                                -40,
                                -100,
                                0),
                        SearchSettings.settle(),
                        SearchSettings.seconds(0.2)),
                List.of(efficiencyFigure(), ampsFigure(), outputFigure(), heatFigure()),
                Duration.ofMinutes(5));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forLoad(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        double fullWatts = settings.number("fullWatts") > 0
                ? settings.number("fullWatts")
                : ExpectedPower.watts(subject).orElseThrow(() -> Faults.of("noRating"));
        List<Double> shares = shares(settings.text("shares"));
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            ToneTaker taker = new ToneTaker(run, subject, settings.number("recordSeconds"));
            double frequencyHz = settings.number("frequencyHz");
            double startDb = settings.number("startDb");
            ToneTaker.Taken start = taker.take(frequencyHz, startDb);
            List<Figure> figures = new ArrayList<>();
            List<String> notes = new ArrayList<>();
            for (double share : shares) {
                String at = plain(share) + " x " + plain(fullWatts) + " W";
                progress.at(figures.size() / (4.0 * shares.size()), at);
                double watts = share * fullWatts;
                if (watts > subject.load().powerLimitWatts()) {
                    notes.add("At " + at + " the load would be overloaded; that level was left out.");
                    continue;
                }
                double driveDb = taker.driveDbFor(watts, start, startDb);
                ToneTaker.Taken taken = taker.take(frequencyHz, driveDb);
                double corrected = taker.driveDbFor(watts, taken, driveDb);
                if (Math.abs(corrected - driveDb) > 10 * Math.log10(1 + NEAR_RATIO) && corrected < 0) {
                    taken = taker.take(frequencyHz, corrected);
                }
                add(subject, taken.acquisition(), frequencyHz, at, figures);
            }
            if (figures.isEmpty()) {
                throw Faults.of("shares.none", fullWatts);
            }
            return new MeasurementResult(figures, Optional.empty(), notes);
        });
    }

    private static List<Double> shares(String text) throws MeasurementException {
        List<Double> shares = new ArrayList<>();
        for (String each : text.split(",")) {
            String number = each.strip();
            if (!number.matches("[0-9]{1,3}(\\.[0-9]{1,9})?") || Double.parseDouble(number) <= 0) {
                throw Faults.of("shares.unread", number);
            }
            shares.add(Double.parseDouble(number));
        }
        return shares;
    }

    private static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(DIGITS))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static void add(
            Subject subject, Acquisition acquisition, double frequencyHz, String at, List<Figure> figures)
            throws MeasurementException {
        double outputWatts = 0;
        double outputVariance = 0;
        for (int channel = 0; channel < subject.channelCount(); channel++) {
            LoadBranch branch = subject.load().branches().get(channel);
            try {
                double watts = LevelAnalysis.analyze(
                                acquisition.output().channels().get(channel), branch, frequencyHz)
                        .powerWatts();
                outputWatts += watts;
                outputVariance += Math.pow(watts * branch.standardUncertaintyOhms() / branch.ohms(), 2);
            } catch (CaptureException e) {
                throw Faults.passedOn(e);
            }
        }
        double volts = SupplyReadings.volts(acquisition.during());
        double amps = SupplyReadings.amps(acquisition.during());
        double supplyWatts = volts * amps;
        if (supplyWatts <= 0) {
            throw Faults.of("supply.polarity", amps, volts);
        }
        // One recorder reads all channels: its error is common to them, those of the loads are not.
        double rms = Math.sqrt(outputWatts * subject.load().branches().get(0).ohms() / subject.channelCount());
        double outputShare = 2
                * SupplyReadings.uncertainty(subject, MeterQuantity.OUTPUT_VOLTS, rms)
                        .orElse(0)
                / rms;
        double voltsShare = SupplyReadings.uncertainty(subject, MeterQuantity.SUPPLY_VOLTS, volts)
                        .orElse(0)
                / volts;
        double ampsShare = SupplyReadings.uncertainty(subject, MeterQuantity.SUPPLY_AMPS, amps)
                        .orElse(0)
                / amps;
        double loadShare = Math.sqrt(outputVariance) / outputWatts;
        double share = Math.sqrt(
                outputShare * outputShare + voltsShare * voltsShare + ampsShare * ampsShare + loadShare * loadShare);
        double percent = 100 * outputWatts / supplyWatts;
        figures.add(Figure.of(efficiencyFigure(), percent).at(at).withStandardUncertainty(percent * share));
        figures.add(Figure.of(ampsFigure(), amps).at(at).withStandardUncertainty(amps * ampsShare));
        figures.add(Figure.of(outputFigure(), outputWatts)
                .at(at)
                .withStandardUncertainty(outputWatts * Math.hypot(outputShare, loadShare)));
        figures.add(Figure.of(heatFigure(), supplyWatts - outputWatts).at(at));
    }
}
