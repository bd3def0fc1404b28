// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.plot.ui.SampledSource;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/**
 * Waveform and spectrum of two readings: beside each other with the same scales, zoomed together, or one over the other. The waves are
 * laid so that the fundamental of each rises through zero at 0 ms; the spectra refer to their own fundamental.
 */
final class PairCharts extends Composite {
    private static final Messages TEXTS = Messages.of(PairCharts.class);
    private static final int CYCLES_SHOWN = 4;
    private static final double HARMONICS_SHOWN = 12.5;
    private static final double LOWEST_DB = -140;
    private static final double HIGHEST_DB = 5;
    private static final double HEADROOM = 1.06;
    private static final double MILLISECONDS = 1000;
    private static final int CHARTS = 4;
    /** The height from which two charts have room, one above the other. */
    private static final int LEAST_FOR_TWO_ROWS = 300;

    private final ChartCanvas[] waves = new ChartCanvas[2];
    private final ChartCanvas[] spectra = new ChartCanvas[2];
    private int made;
    private boolean overlayWanted;
    private boolean overlaid;
    private boolean linking;
    private Optional<PairSide> first = Optional.empty();
    private Optional<PairSide> second = Optional.empty();

    /** Makes it without charts; {@link #makeNext} makes them. */
    PairCharts(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(2).equalWidth(true).applyTo(this);
        addListener(SWT.Resize, event -> arrange());
    }

    /** Makes one chart more. */
    void makeNext() {
        int side = made % 2;
        boolean wave = made < 2;
        ChartCanvas chart =
                Ids.name(new ChartCanvas(this, SWT.NONE), (wave ? "pair.wave." : "pair.spectrum.") + (side + 1));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(chart);
        (wave ? waves : spectra)[side] = chart;
        made++;
        if (side == 1) {
            link(wave ? waves : spectra);
        }
        chart.showMessage(TEXTS.text("pair.chart.nothing"));
        arrange();
        requestLayout();
    }

    /** Has both charts of a row show the same part. */
    private void link(ChartCanvas[] row) {
        for (int side = 0; side < 2; side++) {
            ChartCanvas from = row[side];
            ChartCanvas to = row[1 - side];
            from.addAreaListener(area -> follow(from, to));
        }
    }

    private void follow(ChartCanvas from, ChartCanvas to) {
        if (linking || overlaid || isDisposed() || from.window().equals(to.window())) {
            return;
        }
        linking = true;
        from.window().ifPresentOrElse(to::zoomTo, to::resetZoom);
        linking = false;
    }

    /** Lays the curves over one another in one chart each, or sets them side by side where there is room for four charts. */
    void overlay(boolean wanted) {
        overlayWanted = wanted;
        arrange();
    }

    private void arrange() {
        if (made < CHARTS) {
            return;
        }
        boolean cramped = getClientArea().height < LEAST_FOR_TWO_ROWS;
        boolean over = overlayWanted || cramped;
        int span = over && !cramped ? 2 : 1;
        boolean before = overlaid;
        overlaid = over;
        for (ChartCanvas[] row : List.of(waves, spectra)) {
            row[1].setVisible(!over);
            ((GridData) row[1].getLayoutData()).exclude = over;
            ((GridData) row[0].getLayoutData()).horizontalSpan = span;
        }
        layout(true, true);
        if (before != over && first.isPresent() && second.isPresent()) {
            show(first.get(), second.get());
        }
    }

    /** Shows the captures of two readings. */
    void show(PairSide newFirst, PairSide newSecond) {
        first = Optional.of(newFirst);
        second = Optional.of(newSecond);
        Trace one = Trace.of(newFirst, 0, newFirst);
        Trace other = Trace.of(newSecond, 1, newFirst);
        List<Trace> all = List.of(one, other).stream()
                .filter(trace -> trace.side().wave().isPresent())
                .toList();
        if (overlaid) {
            show(0, all, all, "");
        } else {
            show(0, all, all.contains(one) ? List.of(one) : List.of(), newFirst.whyNoWave());
            show(1, all, all.contains(other) ? List.of(other) : List.of(), newSecond.whyNoWave());
        }
    }

    /** A reading's capture with its name in the legend and its colour. */
    private record Trace(PairSide side, String name, int tone) {
        static Trace of(PairSide side, int tone, PairSide first) {
            boolean again = tone > 0 && side.entry().id().equals(first.entry().id());
            String name = side.entry().id() + " " + side.channel().channel();
            return new Trace(side, again ? TEXTS.text("pair.chart.again", name) : name, tone);
        }

        PairWave wave() {
            return side.wave().orElseThrow();
        }
    }

    private void show(int place, List<Trace> scaled, List<Trace> shown, String whyNot) {
        if (shown.isEmpty()) {
            String nothing = TEXTS.text("pair.chart.nothing");
            waves[place].showMessage(whyNot.isEmpty() ? nothing : whyNot);
            spectra[place].showMessage(nothing);
            return;
        }
        waves[place].show(waveSource(scaled, shown));
        spectra[place].show(spectrumSource(scaled, shown));
        double lowestHz = scaled.stream()
                .mapToDouble(trace -> trace.wave().analysis().frequencyHz())
                .min()
                .orElseThrow();
        waves[place].zoomTo(ViewWindow.ofX(0, MILLISECONDS * CYCLES_SHOWN / lowestHz));
        double highestHz = scaled.stream()
                .mapToDouble(trace -> trace.wave().analysis().frequencyHz())
                .max()
                .orElseThrow();
        double half = halfRate(scaled);
        if (HARMONICS_SHOWN * highestHz < half) {
            spectra[place].zoomTo(ViewWindow.ofX(0, HARMONICS_SHOWN * highestHz));
        }
    }

    private static double halfRate(List<Trace> scaled) {
        return scaled.stream()
                        .mapToDouble(trace -> trace.wave().sampleRateHz())
                        .max()
                        .orElseThrow()
                / 2;
    }

    private static PlotSource waveSource(List<Trace> scaled, List<Trace> shown) {
        double peak = 0;
        double from = 0;
        double to = 0;
        for (Trace trace : scaled) {
            PairWave wave = trace.wave();
            peak = Math.max(
                    peak, Math.abs(wave.analysis().dcVolts()) + wave.analysis().outputVoltsPeak());
            from = Math.min(from, -MILLISECONDS * wave.zeroSeconds());
            to = Math.max(to, MILLISECONDS * (wave.volts().length / wave.sampleRateHz() - wave.zeroSeconds()));
        }
        Plot frame = Plot.of(
                "",
                Axis.linear(TEXTS.text("pair.chart.time"), "ms").withRange(from, to),
                Axis.linear(TEXTS.text("pair.chart.output"), "V").withRange(-HEADROOM * peak, HEADROOM * peak));
        SampledSource source = SampledSource.of(frame);
        for (Trace trace : shown) {
            PairWave wave = trace.wave();
            source = source.with(
                    trace.name(),
                    -MILLISECONDS * wave.zeroSeconds(),
                    MILLISECONDS / wave.sampleRateHz(),
                    wave.volts(),
                    trace.tone());
        }
        return source;
    }

    private static PlotSource spectrumSource(List<Trace> scaled, List<Trace> shown) {
        Plot frame = Plot.of(
                "",
                Axis.linear(TEXTS.text("pair.chart.frequency"), "Hz").withRange(0, halfRate(scaled)),
                Axis.linear(TEXTS.text("pair.chart.level"), "dB").withRange(LOWEST_DB, HIGHEST_DB));
        SampledSource source = SampledSource.of(frame);
        for (Trace trace : shown) {
            PairWave wave = trace.wave();
            source = source.with(trace.name(), wave.binHz(), wave.binHz(), wave.levelsDb(), trace.tone());
        }
        return source;
    }

    /** Writes what is read at the cursors as numbers are shown now. */
    void showDisplay() {
        ReadOutStyle style = new ReadOutStyle(Numbers.decimalComma(), Coverage.words());
        for (int side = 0; side < 2; side++) {
            waves[side].setReadOutStyle(style);
            spectra[side].setReadOutStyle(style);
        }
    }
}
