// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.signal.ClippingLimits;
import org.ohmstead.workbench.look.Numbers;

/**
 * The waveforms of a capture in volts against time. Whatever the window, a channel gives at most two points for each
 * pixel of width, and no peak is lost; where samples are far apart each one carries its marker. Never changes, so that
 * it may be asked on any thread.
 */
public final class WavePlotSource implements PlotSource {
    private static final double HEADROOM = 0.06;
    private static final int PIXELS_PER_MARKER = 7;
    private static final int PIXELS_PER_FITTED_POINT = 3;
    private static final int MOST_FITTED_POINTS = 8_000;
    private static final double LEAST_PIXELS_PER_CYCLE = 12;
    private static final double LEAST_PIXELS_PER_CLIPPED_CYCLE = 20;
    private static final int CYCLES_SHOWN = 5;
    /** The fits have the lighter colours of the palette's second half. */
    private static final int FIT_TONE_OFFSET = 4;

    private static final int CHANNEL_TONES = 4;

    private final LoadedCapture capture;
    private final List<LoadedChannel> shown;
    private final boolean withFundamental;
    private final OptionalDouble mark;

    /**
     * Makes a source.
     *
     * @param shown the channels to draw
     * @param withFundamental whether the fundamental is drawn beside each
     * @param mark place of the user's mark along the time axis
     */
    public WavePlotSource(
            LoadedCapture capture, List<LoadedChannel> shown, boolean withFundamental, OptionalDouble mark) {
        this.capture = capture;
        this.shown = List.copyOf(shown);
        this.withFundamental = withFundamental;
        this.mark = mark;
    }

    static int tone(LoadedChannel channel) {
        return channel.index() % CHANNEL_TONES;
    }

    @Override
    public Plot plot(Optional<ViewWindow> window, int widthPixels) {
        double perSecond = capture.timeUnitsPerSecond();
        double lower = window.map(ViewWindow::lowerX).orElse(0.0);
        double upper = window.map(ViewWindow::upperX).orElse(capture.durationSeconds() * perSecond);
        Axis time = Axis.linear(Texts.say("plots.time"), capture.timeUnit()).withRange(lower, upper);
        Plot plot = Plot.of("", time, voltAxis(window));
        int width = Math.max(1, widthPixels);
        for (LoadedChannel channel : shown) {
            plot = plot.withSeries(samples(channel, lower / perSecond, upper / perSecond, width));
        }
        for (LoadedChannel channel : shown) {
            if (channel.tone().isPresent()) {
                plot = withTone(plot, channel, channel.tone().get(), lower / perSecond, upper / perSecond, width);
            }
        }
        return mark.isPresent() ? plot.withMark(Mark.vertical(mark.getAsDouble(), Texts.say("plots.mark"))) : plot;
    }

    private Axis voltAxis(Optional<ViewWindow> window) {
        double low = 0;
        double high = 0;
        for (LoadedChannel channel : shown) {
            int size = channel.extrema().size();
            low = Math.min(low, channel.extrema().valueAt(channel.extrema().lowestIn(0, size)));
            high = Math.max(high, channel.extrema().valueAt(channel.extrema().highestIn(0, size)));
        }
        double room = high > low ? HEADROOM * (high - low) : 1;
        OptionalDouble wantedLow = window.map(ViewWindow::lowerY).orElse(OptionalDouble.empty());
        OptionalDouble wantedHigh = window.map(ViewWindow::upperY).orElse(OptionalDouble.empty());
        return Axis.linear(Texts.say("plots.output"), "V")
                .withRange(wantedLow.orElse(low - room), wantedHigh.orElse(high + room));
    }

    private int index(double seconds) {
        return (int) Math.max(0, Math.min(capture.size(), Math.floor(seconds * capture.sampleRateHz())));
    }

    private Series samples(LoadedChannel channel, double fromSeconds, double toSeconds, int width) {
        // One more sample at each side lets the line run on to the edges.
        int from = Math.min(index(fromSeconds), capture.size() - 1);
        int to = Math.min(capture.size(), index(toSeconds) + 2);
        int count = Math.max(1, to - from);
        IntToDoubleFunction place = i -> i / capture.sampleRateHz() * capture.timeUnitsPerSecond();
        List<PlotPoint> points;
        if (count <= 2L * width) {
            points = Envelope.all(channel.extrema(), from, from + count, place, 0);
        } else {
            int[] ends = new int[width];
            for (int i = 0; i < width; i++) {
                ends[i] = from + (int) ((i + 1L) * count / width);
            }
            points = Envelope.of(channel.extrema(), from, ends, place, 0);
        }
        Style style = (long) count * PIXELS_PER_MARKER <= width ? Style.LINE_AND_MARKERS : Style.LINE;
        return new Series(channel.name(), points, style, tone(channel));
    }

    private Plot withTone(
            Plot plain,
            LoadedChannel channel,
            LoadedChannel.Tone tone,
            double fromSeconds,
            double toSeconds,
            int width) {
        // The same series are there in every window, empty where they would say nothing.
        Plot plot = plain;
        double from = Math.max(fromSeconds, tone.fromSample() / capture.sampleRateHz());
        double to = Math.min(toSeconds, tone.toSample() / capture.sampleRateHz());
        double pixelsPerCycle =
                width / ((toSeconds - fromSeconds) * tone.fundamental().frequencyHz());
        if (withFundamental) {
            boolean legible = to > from && pixelsPerCycle >= LEAST_PIXELS_PER_CYCLE;
            int count = legible ? Math.min(MOST_FITTED_POINTS, Math.max(2, width / PIXELS_PER_FITTED_POINT)) : 0;
            plot = plot.withSeries(fundamental(channel, tone.fundamental(), from, to, count));
        }
        if (tone.limits().isPresent()) {
            ClippingLimits limits = tone.limits().get();
            boolean legible = to > from && pixelsPerCycle >= LEAST_PIXELS_PER_CLIPPED_CYCLE;
            plot = plot.withSeries(clipped(channel, tone, limits, from, legible ? to : from));
            plot = withLimit(plot, channel, limits.upperVolts());
            plot = withLimit(plot, channel, limits.lowerVolts());
        }
        return plot;
    }

    private static Plot withLimit(Plot plot, LoadedChannel channel, OptionalDouble volts) {
        if (volts.isEmpty()) {
            return plot;
        }
        String text = Texts.say("plots.clips", channel.name(), Numbers.format("%.2f", volts.getAsDouble()));
        return plot.withMark(new Mark.HorizontalLine(volts.getAsDouble(), text, OptionalInt.of(tone(channel))));
    }

    private Series fundamental(LoadedChannel channel, FundamentalWave wave, double from, double to, int count) {
        List<PlotPoint> points = new ArrayList<>(count + 1);
        for (int i = 0; count > 0 && i <= count; i++) {
            double seconds = from + (to - from) * i / count;
            points.add(new PlotPoint(seconds * capture.timeUnitsPerSecond(), wave.voltsAt(seconds)));
        }
        return new Series(
                Texts.say("plots.series.fundamental", channel.name()),
                points,
                Style.DASHED_LINE,
                tone(channel) + FIT_TONE_OFFSET);
    }

    /** A marker at every sample that falls into the time in which the sine would be beyond its limit. */
    private Series clipped(
            LoadedChannel channel, LoadedChannel.Tone tone, ClippingLimits limits, double from, double to) {
        List<PlotPoint> points = new ArrayList<>();
        for (int i = index(from); i < index(to); i++) {
            double seconds = i / capture.sampleRateHz();
            double angle = Math.abs(tone.fundamental().angleFromPeak(seconds));
            if (angle < limits.upperHalfAngleRadians() || Math.PI - angle < limits.lowerHalfAngleRadians()) {
                points.add(new PlotPoint(
                        seconds * capture.timeUnitsPerSecond(),
                        channel.extrema().valueAt(i)));
            }
        }
        return new Series(Texts.say("plots.series.clipped", channel.name()), points, Style.MARKERS, tone(channel));
    }

    @Override
    public OptionalDouble valueAt(String seriesName, double x) {
        return shown.stream()
                .filter(channel -> channel.name().equals(seriesName))
                .mapToDouble(channel -> nearestVolts(channel, x))
                .findFirst();
    }

    /** Returns a few cycles from where the tone is surely on, or empty when there is no tone. */
    public Optional<ViewWindow> fewCycles() {
        return shown.stream()
                .flatMap(channel -> channel.tone().stream())
                .findFirst()
                .map(tone -> {
                    FundamentalWave wave = tone.fundamental();
                    double from = wave.upwardCrossingSeconds(tone.fromSample() / capture.sampleRateHz());
                    double to = Math.min(capture.durationSeconds(), from + CYCLES_SHOWN / wave.frequencyHz());
                    double start = Math.min(from, to - 1 / capture.sampleRateHz());
                    double perSecond = capture.timeUnitsPerSecond();
                    return ViewWindow.ofX(start * perSecond, to * perSecond);
                });
    }

    /** Returns what stands at a place of the time axis: the time, and the volts of the sample nearest to it. */
    String readOut(double x) {
        double seconds = x / capture.timeUnitsPerSecond();
        StringBuilder text = new StringBuilder(time(seconds));
        for (LoadedChannel channel : shown) {
            text.append(Numbers.format("   %s %.4g V", channel.name(), nearestVolts(channel, x)));
        }
        return text.toString();
    }

    /** Returns what lies between the mark and a place: the time, its inverse, and the volts. */
    String difference(double markX, double x) {
        double seconds = (x - markX) / capture.timeUnitsPerSecond();
        StringBuilder text = new StringBuilder("\u0394t ").append(time(seconds));
        if (Math.abs(seconds) > 0) {
            text.append("   1/\u0394t ").append(Levels.hertz(1 / Math.abs(seconds)));
        }
        for (LoadedChannel channel : shown) {
            text.append(Numbers.format(
                    "   \u0394%s %.4g V", channel.name(), nearestVolts(channel, x) - nearestVolts(channel, markX)));
        }
        return text.toString();
    }

    private double nearestVolts(LoadedChannel channel, double x) {
        double position = Math.rint(x / capture.timeUnitsPerSecond() * capture.sampleRateHz());
        return channel.extrema().valueAt((int) Math.max(0, Math.min(capture.size() - 1, position)));
    }

    private static String time(double seconds) {
        return Math.abs(seconds) < 1 ? Numbers.format("%.4f ms", 1000 * seconds) : Numbers.format("%.6f s", seconds);
    }
}
