// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Map;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** The plots of the console as data. */
final class ConsolePlots {
    private static final Messages TEXTS = Messages.of(ConsolePlots.class);

    private static final double PERCENT = 100;
    private static final int TONES = 4;

    private ConsolePlots() {}

    /** Returns the levels that were tried: distortion over power. */
    static Plot search(SearchCourse course) {
        Plot plot = Plot.of("", Axis.log(TEXTS.text("plot.power"), "W"), Axis.log(TEXTS.text("plot.thd"), "%"));
        int tone = 0;
        for (Map.Entry<String, List<SearchCourse.Level>> channel :
                course.levels().entrySet()) {
            List<PlotPoint> points = channel.getValue().stream()
                    .map(level -> new PlotPoint(level.powerWatts(), PERCENT * level.thdRatio()))
                    .sorted((one, other) -> Double.compare(one.x(), other.x()))
                    .toList();
            plot = plot.withSeries(new Series(channel.getKey(), points, Style.LINE_AND_MARKERS, tone % TONES));
            tone++;
        }
        if (course.limitRatio().isPresent()) {
            double limit = course.limitRatio().getAsDouble();
            plot = plot.withMark(Mark.horizontal(PERCENT * limit, Numbers.percent(limit)));
        }
        return plot;
    }

    /** Returns a few cycles of the output. */
    static Plot wave(AcquisitionLook look) {
        Plot plot =
                Plot.of("", Axis.linear(TEXTS.text("plot.time"), "ms"), Axis.linear(TEXTS.text("plot.output"), "V"));
        for (int i = 0; i < look.channels().size(); i++) {
            AcquisitionLook.Channel channel = look.channels().get(i);
            plot = plot.withSeries(new Series(channel.name(), channel.wave(), Style.LINE, i % TONES));
        }
        return plot;
    }

    /** Returns the spectrum of the output. */
    static Plot spectrum(AcquisitionLook look) {
        Plot plot =
                Plot.of("", Axis.log(TEXTS.text("plot.frequency"), "Hz"), Axis.linear(TEXTS.text("plot.level"), "dBV"));
        for (int i = 0; i < look.channels().size(); i++) {
            AcquisitionLook.Channel channel = look.channels().get(i);
            plot = plot.withSeries(new Series(channel.name(), channel.spectrum(), Style.LINE, i % TONES));
        }
        return plot;
    }
}
