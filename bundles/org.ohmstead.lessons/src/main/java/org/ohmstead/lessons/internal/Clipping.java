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
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Harmonic;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.WaveformAnalyzer;
import org.ohmstead.signal.Waveforms;
import org.ohmstead.signal.gain.Overdrive;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** What turning up beyond the onset of clipping adds: power, and harmonics. */
final class Clipping {
    private static final double RATE_HZ = 192_000;
    private static final double TONE_HZ = 1000;
    private static final int SAMPLES = 1536;
    private static final int SAMPLES_SHOWN = 385;
    private static final double MILLISECONDS = 1000;
    private static final double HOT_DB = 3;
    private static final double LEAST_SHOWN_PERCENT = 2;

    private final Words words;

    private Clipping(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "clipping");
        List<Control> controls = List.of(
                words.slider("drive", Unit.DECIBEL, 0, 12, 3, 0.1, 3),
                words.slider("limit", Unit.VOLT, 5, 60, 20, 0.5, 3),
                words.logSlider("load", Unit.OHM, 1, 16, 4, 3));
        return words.lesson(controls, words.ask(Unit.PERCENT, 0, 5, 3), new Clipping(words)::at);
    }

    private LessonResult at(Controls values) {
        double driveDb = values.number("drive");
        double limit = values.number("limit");
        double onset = StageLoad.resistor(values.number("load")).watts(limit / Math.sqrt(2));
        Overdrive wave = new Overdrive(driveDb);
        Waveform wanted = Waveforms.sine(RATE_HZ, SAMPLES, TONE_HZ, limit * Decibels.toFieldRatio(driveDb), 0);
        Waveform cut = cut(wanted, limit);
        ChannelAnalysis seen = analysis(cut, values.number("load"));
        double watts = onset * wave.powerRatio();
        double extra = 100 * (wave.powerRatio() - 1);
        List<Figure> figures = List.of(
                words.hidden("extra", extra, Unit.PERCENT, 3),
                words.given("onset", onset, Unit.WATT, 4),
                words.hidden("power", watts, Unit.WATT, 4),
                words.hidden("fundamental", seen.fundamentalPowerWatts(), Unit.WATT, 4),
                words.hidden("distortion", 100 * wave.thdFRatio(), Unit.PERCENT, 3),
                words.hidden("flat", 100 * wave.flatTimeRatio(), Unit.PERCENT, 3),
                words.hidden("crest", seen.crestFactorDb(), Unit.DECIBEL, 3));
        Answer answer = new Answer.Number(
                extra,
                words.say(
                        "reason",
                        words.text(driveDb, Unit.DECIBEL, 2),
                        words.text(onset, Unit.WATT, 3),
                        words.text(watts, Unit.WATT, 3),
                        words.text(Decibels.toPowerRatio(driveDb), Unit.NONE, 3)));
        List<String> remarks = List.of(words.say(
                "remark.harmonics",
                words.text(Math.max(0, watts - seen.fundamentalPowerWatts()), Unit.WATT, 3),
                words.text(100 * wave.thdFRatio(), Unit.PERCENT, 3)));
        List<String> cautions = driveDb >= HOT_DB ? List.of(words.say("driven-hard")) : List.of();
        List<Picture> pictures = List.of(
                new Picture("wave", wavePlot(wanted, cut), false), new Picture("harmonics", harmonicsPlot(seen), true));
        return new LessonResult(figures, pictures, answer, remarks, cautions);
    }

    private static Waveform cut(Waveform wanted, double limit) {
        double[] samples = wanted.toArray();
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.max(-limit, Math.min(limit, samples[i]));
        }
        return Waveform.of(wanted.sampleRateHz(), samples);
    }

    private static ChannelAnalysis analysis(Waveform wave, double ohms) {
        try {
            return WaveformAnalyzer.analyze(
                    wave, AnalysisSettings.forResistance(ohms).withFrequencyHz(TONE_HZ));
        } catch (CaptureException e) {
            throw new IllegalStateException("The lesson's own tone could not be analysed.", e);
        }
    }

    private Plot wavePlot(Waveform wanted, Waveform cut) {
        return Plot.of(
                        words.say("plot.wave"),
                        Axis.linear(words.say("axis.time"), "ms"),
                        words.axis("volts", Unit.VOLT))
                .withSeries(wave(words.say("plot.wanted"), wanted, Style.DASHED_LINE, 1))
                .withSeries(wave(words.say("plot.cut"), cut, Style.LINE, 0));
    }

    private static Series wave(String name, Waveform wave, Style style, int tone) {
        double[] x = new double[SAMPLES_SHOWN];
        double[] y = new double[SAMPLES_SHOWN];
        for (int i = 0; i < SAMPLES_SHOWN; i++) {
            x[i] = MILLISECONDS * i / wave.sampleRateHz();
            y[i] = wave.voltsAt(i);
        }
        return Series.of(name, x, y, style, tone);
    }

    private Plot harmonicsPlot(ChannelAnalysis seen) {
        List<PlotPoint> points = new ArrayList<>();
        double greatest = LEAST_SHOWN_PERCENT;
        for (Harmonic harmonic : seen.harmonics()) {
            double percent = 100 * harmonic.ratioToFundamental();
            points.add(new PlotPoint(harmonic.order(), percent));
            greatest = Math.max(greatest, 1.1 * percent);
        }
        return Plot.of(
                        words.say("plot.harmonics"),
                        Axis.linear(words.say("axis.order"), "").withRange(1, 21),
                        words.axis("ratio", Unit.PERCENT).withRange(0, greatest))
                .withSeries(new Series("", points, Style.STEMS, 0));
    }
}
