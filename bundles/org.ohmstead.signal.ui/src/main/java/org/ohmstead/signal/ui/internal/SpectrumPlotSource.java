// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.signal.Harmonic;
import org.ohmstead.workbench.look.Numbers;

/**
 * The spectra of a capture against the logarithm of frequency. Whatever the window, a channel gives at most two points
 * for each pixel of width, and no line of the spectrum is lost. Never changes, so that it may be asked on any thread.
 */
public final class SpectrumPlotSource implements PlotSource {
    private static final double LOWEST_HZ = 10;
    private static final double TEN_DB = 10;
    private static final double ROOM_BELOW_FLOOR_DB = 15;
    private static final double MOST_RANGE_DB = 180;
    private static final double NEAR_HARMONIC_RATIO = 0.03;
    private static final double RANGE_WITHOUT_FLOOR_DB = 130;
    private static final double SAME_FLOOR_DB = 3;
    private static final int HIGHEST_MARKED_ORDER = 10;

    private final LoadedCapture capture;
    private final List<LoadedChannel> shown;
    private final Reference reference;
    private final OptionalDouble mark;

    /** What 0 dB stands for. */
    public enum Reference {
        /** The fundamental of each channel. */
        FUNDAMENTAL,
        /** One volt RMS. */
        VOLT;

        String text() {
            return Texts.say("plots.reference." + name());
        }
    }

    /**
     * Makes a source.
     *
     * @param shown the channels to draw
     * @param wanted what 0 dB stands for; without a tone in every channel there is no fundamental to refer to
     * @param mark place of the user's mark along the frequency axis
     */
    public SpectrumPlotSource(LoadedCapture capture, List<LoadedChannel> shown, Reference wanted, OptionalDouble mark) {
        this.capture = capture;
        this.shown = List.copyOf(shown);
        this.reference = shown.stream().allMatch(channel -> channel.tone().isPresent()) ? wanted : Reference.VOLT;
        this.mark = mark;
    }

    /** Returns what 0 dB stands for in fact. */
    public Reference reference() {
        return reference;
    }

    /** What is added to a level in dBV. */
    private double lift(LoadedChannel channel) {
        return reference == Reference.VOLT
                ? 0
                : -channel.tone()
                        .map(tone -> Levels.ofRatio(tone.analysis().fundamentalVoltsRms()))
                        .orElse(0.0);
    }

    @Override
    public Plot plot(Optional<ViewWindow> window, int widthPixels) {
        double half = capture.sampleRateHz() / 2;
        double lower = window.map(ViewWindow::lowerX).orElse(Math.min(half / 2, Math.max(LOWEST_HZ, leastBinHz())));
        double upper = window.map(ViewWindow::upperX).orElse(half);
        Axis frequency = Axis.log(Texts.say("plots.frequency"), "Hz").withRange(lower, upper);
        Plot plot = Plot.of("", frequency, levelAxis(window));
        for (LoadedChannel channel : shown) {
            plot = plot.withSeries(levels(channel, lower, upper, Math.max(1, widthPixels)));
        }
        for (LoadedChannel channel : shown) {
            plot = withHarmonics(plot, channel, channel == shown.get(0));
        }
        plot = withFloors(plot);
        return mark.isPresent() ? plot.withMark(Mark.vertical(mark.getAsDouble(), Texts.say("plots.mark"))) : plot;
    }

    /** One line for channels whose floors are as good as equal. */
    private Plot withFloors(Plot plain) {
        Plot plot = plain;
        List<Double> drawn = new ArrayList<>();
        for (LoadedChannel channel : shown) {
            double floor = channel.spectrum().floorDbv() + lift(channel);
            boolean known = channel.spectrum().floorKnown();
            if (known && drawn.stream().noneMatch(other -> Math.abs(other - floor) < SAME_FLOOR_DB)) {
                drawn.add(floor);
                String decibels = Numbers.format("%.0f", floor);
                plot = plot.withMark(new Mark.HorizontalLine(
                        floor,
                        floorsDiffer()
                                ? Texts.say("plots.floorOf", channel.name(), decibels)
                                : Texts.say("plots.floor", decibels),
                        OptionalInt.of(WavePlotSource.tone(channel))));
            }
        }
        return plot;
    }

    private boolean floorsDiffer() {
        double first = shown.get(0).spectrum().floorDbv() + lift(shown.get(0));
        return shown.stream()
                .anyMatch(each -> Math.abs(each.spectrum().floorDbv() + lift(each) - first) >= SAME_FLOOR_DB);
    }

    private double leastBinHz() {
        return shown.stream()
                .mapToDouble(channel -> channel.spectrum().binHz())
                .min()
                .orElse(LOWEST_HZ);
    }

    private Axis levelAxis(Optional<ViewWindow> window) {
        double top = Double.NEGATIVE_INFINITY;
        double floor = Double.POSITIVE_INFINITY;
        for (LoadedChannel channel : shown) {
            SpectrumTrace spectrum = channel.spectrum();
            int highest = spectrum.levelsDbv().highestIn(0, spectrum.levelsDbv().size());
            top = Math.max(top, spectrum.levelsDbv().valueAt(highest) + lift(channel));
            double bottom = spectrum.floorKnown() ? spectrum.floorDbv() + lift(channel) : top - RANGE_WITHOUT_FLOOR_DB;
            floor = Math.min(floor, bottom);
        }
        double high = shown.isEmpty() ? 0 : TEN_DB * Math.ceil(top / TEN_DB + 0.3);
        double low = shown.isEmpty() ? -MOST_RANGE_DB : TEN_DB * Math.floor((floor - ROOM_BELOW_FLOOR_DB) / TEN_DB);
        low = Math.max(high - MOST_RANGE_DB, Math.min(low, high - 2 * TEN_DB));
        OptionalDouble wantedLow = window.map(ViewWindow::lowerY).orElse(OptionalDouble.empty());
        OptionalDouble wantedHigh = window.map(ViewWindow::upperY).orElse(OptionalDouble.empty());
        return Axis.linear(Texts.say("plots.level"), reference.text())
                .withRange(wantedLow.orElse(low), wantedHigh.orElse(high));
    }

    private Series levels(LoadedChannel channel, double lower, double upper, int width) {
        SpectrumTrace spectrum = channel.spectrum();
        int size = spectrum.levelsDbv().size();
        int from = (int) Math.max(0, Math.min(size - 1.0, Math.floor(lower / spectrum.binHz()) - 1));
        int to = (int) Math.max(from + 1.0, Math.min(size, Math.ceil(upper / spectrum.binHz()) + 1));
        List<PlotPoint> points;
        if (to - from <= 2L * width) {
            points = Envelope.all(spectrum.levelsDbv(), from, to, spectrum::frequencyHz, lift(channel));
        } else {
            points = Envelope.of(
                    spectrum.levelsDbv(), from, ends(spectrum, from, to, width), spectrum::frequencyHz, lift(channel));
        }
        return new Series(channel.name(), points, Style.LINE, WavePlotSource.tone(channel));
    }

    /** Ends of runs that are equally long in the logarithm of frequency. */
    private static int[] ends(SpectrumTrace spectrum, int from, int to, int width) {
        double first = Math.log(spectrum.frequencyHz(from));
        double step = (Math.log(spectrum.frequencyHz(to - 1)) - first) / width;
        int[] ends = new int[width];
        for (int i = 0; i < width - 1; i++) {
            double limit = Math.exp(first + (i + 1) * step) / spectrum.binHz() - 1;
            ends[i] = (int) Math.max(from, Math.min(to, Math.ceil(limit)));
        }
        ends[width - 1] = to;
        return ends;
    }

    private Plot withHarmonics(Plot plain, LoadedChannel channel, boolean named) {
        Plot plot = plain;
        for (PlotPoint point : harmonicPoints(channel)) {
            int order = (int) Math.rint(point.x() / fundamentalHz(channel));
            String text = named ? String.format(Locale.ROOT, "H%d %.0f", order, point.y()) : "";
            int tone = WavePlotSource.tone(channel);
            plot = plot.withMark(Mark.point(point.x(), point.y(), text, Palette.marker(tone), tone));
        }
        return plot;
    }

    private static double fundamentalHz(LoadedChannel channel) {
        return channel.tone().map(tone -> tone.analysis().frequencyHz()).orElse(1.0);
    }

    /** Harmonics 2 to 10 at the levels that the fit found, as far as they stand out of the noise. */
    private List<PlotPoint> harmonicPoints(LoadedChannel channel) {
        List<PlotPoint> points = new ArrayList<>();
        channel.tone().ifPresent(tone -> {
            double fundamentalDbv = Levels.ofRatio(tone.analysis().fundamentalVoltsRms());
            for (Harmonic harmonic : tone.analysis().harmonics()) {
                double levelDbv = Levels.ofRatio(harmonic.ratioToFundamental()) + fundamentalDbv;
                boolean standsOut = levelDbv > channel.spectrum().floorDbv() + TEN_DB;
                if (harmonic.order() <= HIGHEST_MARKED_ORDER && standsOut) {
                    points.add(
                            new PlotPoint(harmonic.order() * tone.analysis().frequencyHz(), levelDbv + lift(channel)));
                }
            }
        });
        return points;
    }

    @Override
    public OptionalDouble valueAt(String seriesName, double x) {
        return shown.stream()
                .filter(channel -> channel.name().equals(seriesName))
                .mapToDouble(channel -> level(channel, x))
                .findFirst();
    }

    /** Returns what stands at a place of the frequency axis: the nearest bins, and the harmonic if one is close. */
    String readOut(double x) {
        StringBuilder text = new StringBuilder(Levels.hertz(x));
        for (LoadedChannel channel : shown) {
            text.append(Numbers.format("   %s %.2f dB", channel.name(), level(channel, x)));
            for (PlotPoint point : harmonicPoints(channel)) {
                if (Math.abs(point.x() / x - 1) < NEAR_HARMONIC_RATIO) {
                    text.append(Numbers.format(
                            " (H%d %.2f dB)", Math.round(point.x() / fundamentalHz(channel)), point.y()));
                }
            }
        }
        return text.toString();
    }

    /** Returns what lies between the mark and a place: the frequency and the levels. */
    String difference(double markX, double x) {
        StringBuilder text = new StringBuilder("\u0394f ").append(Levels.hertz(x - markX));
        for (LoadedChannel channel : shown) {
            text.append(
                    Numbers.format("   \u0394%s %.2f dB", channel.name(), level(channel, x) - level(channel, markX)));
        }
        return text.toString();
    }

    private double level(LoadedChannel channel, double frequencyHz) {
        SpectrumTrace spectrum = channel.spectrum();
        return spectrum.levelsDbv().valueAt(spectrum.nearestIndex(frequencyHz)) + lift(channel);
    }
}
