// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.plot.LongRecord;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/**
 * A source for long records taken at even distances, such as millions of samples of a captured wave. Each plot has only
 * what is in view, thinned so that no peak is lost; read-outs are from the record itself. All samples are gone through with
 * the first plot alone. Immutable; the samples are not copied and must not be changed.
 */
public final class SampledSource implements PlotSource {
    private final Plot frame;
    private final List<Wave> waves;

    private SampledSource(Plot frame, List<Wave> waves) {
        this.frame = frame;
        this.waves = List.copyOf(waves);
    }

    private static final class Wave {
        private final String name;
        private final double firstX;
        private final double stepX;
        private final double[] samples;
        private final int tone;
        /** Made with the first plot, away from the UI thread. */
        private LongRecord record;

        Wave(String name, double firstX, double stepX, double[] samples, int tone) {
            this.name = name;
            this.firstX = firstX;
            this.stepX = stepX;
            this.samples = samples;
            this.tone = tone;
        }

        private synchronized LongRecord record() {
            if (record == null) {
                record = LongRecord.of(samples);
            }
            return record;
        }

        private double place(double x) {
            return (x - firstX) / stepX;
        }

        Series inView(Optional<ViewWindow> window, int buckets) {
            int from = 0;
            int to = samples.length;
            if (window.isPresent()) {
                // One sample beyond each edge, so that the line leads out of view.
                from = within(Math.floor(place(window.get().lowerX())) - 1);
                to = Math.max(from, within(Math.ceil(place(window.get().upperX())) + 2));
            }
            return new Series(name, record().envelope(firstX, stepX, from, to, buckets), Style.LINE, tone);
        }

        OptionalDouble valueAt(double x) {
            double place = place(x);
            if (!(place >= 0) || !(place <= samples.length - 1)) {
                return OptionalDouble.empty();
            }
            int before = (int) Math.min(Math.floor(place), Math.max(0, samples.length - 2));
            double share = place - before;
            double left = samples[before];
            double right = samples[Math.min(before + 1, samples.length - 1)];
            return OptionalDouble.of(share == 0 ? left : left + share * (right - left));
        }

        private int within(double index) {
            return (int) Math.max(0, Math.min(samples.length, index));
        }
    }

    /** Returns a source without waves; title, axes, marks, bands and short series are those of the frame. */
    public static SampledSource of(Plot frame) {
        return new SampledSource(Objects.requireNonNull(frame, "frame"), List.of());
    }

    /**
     * Returns this source with one more wave, drawn over those it has.
     *
     * @param name what the legend says
     * @param firstX place of the first sample
     * @param stepX distance between two samples, above 0
     * @param samples the values, all finite
     * @param tone the index of the colour, 0 to 7
     */
    public SampledSource with(String name, double firstX, double stepX, double[] samples, int tone) {
        if (!(stepX > 0) || !Double.isFinite(stepX)) {
            throw new IllegalArgumentException("stepX must be above 0 but is " + stepX + ".");
        }
        List<Wave> more = new ArrayList<>(waves);
        more.add(new Wave(name, firstX, stepX, samples, tone));
        return new SampledSource(frame, more);
    }

    @Override
    public Plot plot(Optional<ViewWindow> window, int widthPixels) {
        Plot plot = frame;
        for (Wave wave : waves) {
            plot = plot.withSeries(wave.inView(window, Math.max(1, widthPixels)));
        }
        return plot;
    }

    @Override
    public OptionalDouble valueAt(String seriesName, double x) {
        for (Wave wave : waves) {
            OptionalDouble value = wave.name.equals(seriesName) ? wave.valueAt(x) : OptionalDouble.empty();
            if (value.isPresent()) {
                return value;
            }
        }
        return OptionalDouble.empty();
    }
}
