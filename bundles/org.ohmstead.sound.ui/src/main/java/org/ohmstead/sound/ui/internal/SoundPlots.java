// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.Tick;
import org.ohmstead.signal.sound.FractionalOctave;
import org.ohmstead.signal.sound.SeriesComparison;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** The charts of a series: level, and change against another. */
final class SoundPlots {
    private static final int LOWEST_BAND = -20;
    private static final int HIGHEST_BAND = 13;
    private static final int FEW_TICKS = 12;

    private SoundPlots() {}

    /** Returns whether the series is one over drive: all points of one frequency, with several drives. */
    static boolean overDrive(SoundSeries series) {
        long frequencies =
                series.points().stream().map(SoundPoint::frequencyHz).distinct().count();
        long drives =
                series.points().stream().map(SoundPoint::driveDb).distinct().count();
        return frequencies == 1
                && drives > 1
                && series.points().stream().allMatch(point -> point.driveDb().isPresent());
    }

    /** Returns the levels of a series and of the one that it is compared with. */
    static Plot levels(SoundSeries series, String name, Optional<SoundSeries> other, String otherName) {
        boolean drive = overDrive(series);
        Plot plot = Plot.of("", xAxis(series, other, drive), Axis.linear(Texts.say("plot.level"), "dB"));
        if (other.isPresent()) {
            for (Series each : lines(other.get(), otherName, drive, 1)) {
                plot = plot.withSeries(each);
            }
        }
        for (Series each : lines(series, name, drive, 0)) {
            plot = plot.withSeries(each);
        }
        return plot;
    }

    /** Returns the changes with their expanded uncertainty; the name says what is less what. */
    static Plot changes(SeriesComparison comparison, SoundSeries series, Optional<SoundSeries> other, String name) {
        boolean drive = overDrive(series);
        List<PlotPoint> points = comparison.differences().stream()
                .map(each -> new PlotPoint(
                        x(each.second(), drive),
                        each.change().valueDb(),
                        Coverage.expanded(each.change().standardUncertaintyDb())))
                .sorted(Comparator.comparingDouble(PlotPoint::x))
                .toList();
        return Plot.of("", xAxis(series, other, drive), Axis.linear(Texts.say("plot.change"), "dB"))
                .withSeries(new Series(name, points, Style.LINE_AND_MARKERS, 2))
                .withMark(new Mark.HorizontalLine(0, "", OptionalInt.empty()));
    }

    private static double x(SoundPoint point, boolean drive) {
        return drive ? point.driveDb().orElse(0) : point.frequencyHz();
    }

    private static Axis xAxis(SoundSeries series, Optional<SoundSeries> other, boolean drive) {
        if (drive) {
            return Axis.linear(Texts.say("column.drive"), "dB");
        }
        List<SoundPoint> all = new ArrayList<>(series.points());
        other.ifPresent(each -> all.addAll(each.points()));
        double low = all.stream().mapToDouble(SoundPoint::frequencyHz).min().orElse(20);
        double high = all.stream().mapToDouble(SoundPoint::frequencyHz).max().orElse(200);
        return Axis.log(Texts.say("column.frequency"), "Hz")
                .withRange(low / 1.12, high * 1.12)
                .withTicks(ticks(low, high));
    }

    /** The thirds of an octave by their names, or only the octaves where there are many. */
    private static List<Tick> ticks(double low, double high) {
        List<Tick> thirds = new ArrayList<>();
        List<Tick> octaves = new ArrayList<>();
        for (int x = LOWEST_BAND; x <= HIGHEST_BAND; x++) {
            double hertz = FractionalOctave.THIRD_OCTAVE.nominalHz(x);
            if (hertz >= low / 1.1 && hertz <= high * 1.1) {
                Tick tick = new Tick(hertz, Numbers.shown(hertz));
                thirds.add(tick);
                if (x % 3 == 0) {
                    octaves.add(tick);
                }
            }
        }
        return thirds.size() <= FEW_TICKS ? thirds : octaves;
    }

    /** One line for each drive and weighting, or for each weighting over drive. */
    private static List<Series> lines(SoundSeries series, String name, boolean drive, int firstTone) {
        Map<String, List<SoundPoint>> groups = new LinkedHashMap<>();
        for (SoundPoint point : series.points()) {
            if (!drive || point.driveDb().isPresent()) {
                groups.computeIfAbsent(label(point, name, drive), any -> new ArrayList<>())
                        .add(point);
            }
        }
        List<Series> lines = new ArrayList<>();
        ToDoubleFunction<SoundPoint> place = point -> x(point, drive);
        int tone = firstTone;
        for (Map.Entry<String, List<SoundPoint>> group : groups.entrySet()) {
            List<PlotPoint> points = group.getValue().stream()
                    .sorted(Comparator.comparingDouble(place))
                    .map(point -> new PlotPoint(
                            place.applyAsDouble(point),
                            point.levelDb(),
                            Coverage.expanded(series.level(point).standardUncertaintyDb())))
                    .toList();
            lines.add(new Series(group.getKey(), points, Style.LINE_AND_MARKERS, tone % Palette.TONES));
            tone += 3;
        }
        return lines;
    }

    private static String label(SoundPoint point, String name, boolean drive) {
        String level = drive || point.driveDb().isEmpty()
                ? ""
                : ", " + Numbers.shown(point.driveDb().getAsDouble()) + " dB";
        return name + level + ", " + point.weighting().name();
    }
}
