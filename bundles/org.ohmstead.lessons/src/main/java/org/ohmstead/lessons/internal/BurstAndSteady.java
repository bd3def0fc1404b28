// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.signal.Waveforms;
import org.ohmstead.thermal.ClassAbStage;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.thermal.SupplyAnswer;
import org.ohmstead.thermal.SupplyDemand;
import org.ohmstead.thermal.SupplyNode;
import org.ohmstead.thermal.SupplySource;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Why a burst gives more power than a steady tone, and yet hardly any heat. */
final class BurstAndSteady {
    private static final double SUPPLY_VOLTS = 14.4;
    private static final double SATURATION_VOLTS = 1.6;
    private static final double PERIOD_SECONDS = 0.5;
    private static final double MILLISECONDS = 1000;
    private static final double MOST_SOURCE_OHMS = 0.3;
    private static final double SINE_PEAK_POWER = 2;
    private static final double WHOLE = 1e-6;

    private final Words words;

    private BurstAndSteady(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "burst-and-steady");
        List<Control> controls = List.of(
                words.logSlider("on", Unit.SECOND, 0.005, PERIOD_SECONDS, 0.02, 3),
                words.slider("low", Unit.DECIBEL, -40, 0, -20, 1, 2),
                words.logSlider("frequency", Unit.HERTZ, 20, 1000, 1000, 3),
                words.slider("source", Unit.OHM, 0, MOST_SOURCE_OHMS, 0.1, 0.005, 2),
                words.logSlider("load", Unit.OHM, 1, 8, 2, 3));
        return words.lesson(controls, words.ask(Unit.PERCENT, 0.2, 1, 3), new BurstAndSteady(words)::at);
    }

    /** Returns the power of a bridge at its limit behind a supply with a resistance, which sags with the steady current. */
    private static double steadyWatts(double sourceOhms, double loadOhms) {
        double demandOhms = Math.PI / 2 * loadOhms;
        SupplyNode node = new SupplyNode(SupplySource.battery(SUPPLY_VOLTS, 0), sourceOhms);
        SupplyAnswer answer = node.answer(new SupplyDemand.Stage(demandOhms, SATURATION_VOLTS));
        if (answer instanceof SupplyAnswer.Delivered delivered) {
            return watts(delivered.amps() * demandOhms, loadOhms);
        }
        throw new IllegalStateException("A supply without a limit of current did not deliver.");
    }

    private static double watts(double peakVolts, double loadOhms) {
        return StageLoad.resistor(loadOhms).watts(peakVolts / Math.sqrt(2));
    }

    private LessonResult at(Controls values) {
        double onSeconds = values.number("on");
        double ohms = values.number("load");
        double peakVolts = SUPPLY_VOLTS - SATURATION_VOLTS;
        double burst = watts(peakVolts, ohms);
        double steady = steadyWatts(values.number("source"), ohms);
        double lowRatio = Decibels.toFieldRatio(values.number("low"));
        double loudVolts = peakVolts / Math.sqrt(2);
        Drive pattern = new Drive.Burst(loudVolts, onSeconds, lowRatio * loudVolts, PERIOD_SECONDS - onSeconds);
        double mean = ClassAbStage.fullBridge(SUPPLY_VOLTS)
                .split(pattern, StageLoad.resistor(ohms))
                .outputWatts();
        double share = mean / burst;
        double cycles = onSeconds * values.number("frequency");
        double headroomDb = Decibels.ofPowerRatio(burst / steady);
        List<Figure> figures = List.of(
                words.hidden("share", 100 * share, Unit.PERCENT, 3),
                words.given("burst", burst, Unit.WATT, 4),
                words.hidden("mean", mean, Unit.WATT, 3),
                words.hidden("mean-level", Decibels.ofPowerRatio(share), Unit.DECIBEL, 3),
                words.hidden("crest", Decibels.ofPowerRatio(SINE_PEAK_POWER / share), Unit.DECIBEL, 3),
                words.hidden("steady", steady, Unit.WATT, 4),
                words.hidden("headroom", headroomDb, Unit.DECIBEL, 2),
                words.given("cycles", cycles, Unit.NONE, 3));
        Answer answer = new Answer.Number(
                100 * share,
                words.say(
                        "reason",
                        words.text(100 * onSeconds / PERIOD_SECONDS, Unit.PERCENT, 2),
                        words.text(burst, Unit.WATT, 3),
                        words.text(mean, Unit.WATT, 3)));
        List<String> remarks = new ArrayList<>();
        remarks.add(words.say(
                "remark.headroom",
                words.text(burst, Unit.WATT, 3),
                words.text(steady, Unit.WATT, 3),
                words.text(headroomDb, Unit.DECIBEL, 2)));
        if (Math.floor(cycles + WHOLE) < 1) {
            remarks.add(words.say("remark.no-cycle", words.text(cycles, Unit.NONE, 2)));
        } else if (Math.abs(cycles - Math.rint(cycles)) > WHOLE * cycles) {
            remarks.add(words.say("remark.part-cycle", words.text(cycles, Unit.NONE, 3)));
        }
        List<Picture> pictures = List.of(
                new Picture("pattern", patternPlot(onSeconds, lowRatio), false),
                new Picture("steady-power", supplyPlot(values, burst, steady), true));
        return new LessonResult(figures, pictures, answer, remarks, List.of());
    }

    private Plot patternPlot(double onSeconds, double lowRatio) {
        Waveforms.BurstPattern pattern = new Waveforms.BurstPattern(onSeconds, PERIOD_SECONDS, lowRatio, 0);
        List<PlotPoint> points = new ArrayList<>();
        for (double begin = 0; begin < 2 * PERIOD_SECONDS; begin += PERIOD_SECONDS) {
            step(points, begin, begin + onSeconds, pattern);
            if (onSeconds < PERIOD_SECONDS) {
                step(points, begin + onSeconds, begin + PERIOD_SECONDS, pattern);
            }
        }
        return Plot.of(
                        words.say("plot.pattern"),
                        Axis.linear(words.say("axis.time"), "ms"),
                        words.axis("level", Unit.PERCENT).withRange(0, 105))
                .withSeries(new Series("", points, Style.FILLED, 0));
    }

    private static void step(List<PlotPoint> points, double from, double to, Waveforms.BurstPattern pattern) {
        double level = pattern.isOn((from + to) / 2) ? 100 : 100 * pattern.lowRatio();
        points.add(new PlotPoint(MILLISECONDS * from, level));
        points.add(new PlotPoint(MILLISECONDS * to, level));
    }

    private Plot supplyPlot(Controls values, double burst, double steady) {
        double ohms = values.number("load");
        double source = values.number("source");
        return Plot.of(
                        words.say("plot.supply"),
                        words.axis("source", Unit.OHM),
                        words.axis("power", Unit.WATT).withLower(0))
                .withSeries(
                        Lines.linear(words.say("plot.burst"), 0, MOST_SOURCE_OHMS, r -> burst, Style.DASHED_LINE, 1))
                .withSeries(Lines.linear(
                        words.say("plot.steady"), 0, MOST_SOURCE_OHMS, r -> steadyWatts(r, ohms), Style.LINE, 0))
                .withMark(Mark.point(source, steady, words.text(steady, Unit.WATT, 3), MarkerShape.CIRCLE, 0));
    }
}
