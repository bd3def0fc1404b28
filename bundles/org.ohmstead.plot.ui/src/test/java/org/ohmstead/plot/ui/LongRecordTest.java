// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.settle;
import static org.ohmstead.plot.ui.UiThread.wheel;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;

/** Two million samples: zoomed and panned through thinned plots that are made and drawn in the background. */
class LongRecordTest {
    private static final int SAMPLES = 2_000_000;
    private static final double STEP = 1 / 192_000.0;
    private static final int PEAK = 1_234_567;

    private Shell shell;
    private ChartCanvas chart;
    private double[] samples;

    @BeforeEach
    void open() {
        samples = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            samples[i] = 10 * Math.sin(2 * Math.PI * 1000 * i * STEP);
        }
        samples[PEAK] = 18;
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        shell.setSize(900, 480);
        shell.open();
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    private SampledSource source() {
        return SampledSource.of(Plot.of("Output", Axis.linear("Time", "s"), Axis.linear("Voltage", "V")))
                .with("CH1", 0, STEP, samples, 0);
    }

    @Test
    void plotsAreThinnedToTheWidthAndKeepThePeak() {
        Plot whole = source().plot(Optional.empty(), 800);
        assertTrue(whole.series().get(0).points().size() <= 2 * 800 + 2);
        assertTrue(whole.series().get(0).points().contains(new PlotPoint(PEAK * STEP, 18)));
        Plot near = source().plot(Optional.of(ViewWindow.ofX(1.0, 1.001)), 800);
        // 192 samples in a millisecond and one or two more on either side.
        int count = near.series().get(0).points().size();
        assertTrue(count >= 194 && count <= 198, "count is " + count);
        assertTrue(near.series().get(0).points().get(0).x() < 1.0);
        assertTrue(near.series().get(0).points().get(count - 1).x() > 1.001);
        Plot beside = source().plot(Optional.of(ViewWindow.ofX(100, 101)), 800);
        assertTrue(beside.series().get(0).points().size() <= 1);
    }

    @Test
    void readOutIsFromTheRecordItself() {
        chart.show(source());
        settle(chart);
        chart.moveCursorTo(PEAK * STEP);
        assertEquals(
                18, chart.readOut().orElseThrow().entry("CH1").orElseThrow().y(), 1e-6);
        chart.moveCursorTo(777 * STEP);
        assertEquals(
                samples[777],
                chart.readOut().orElseThrow().entry("CH1").orElseThrow().y(),
                1e-6);
    }

    @Test
    void zoomingNeverAsksTheSourceInTheUiThreadAndSkipsWhatIsOvertaken() {
        SampledSource record = source();
        Set<Thread> askers = ConcurrentHashMap.newKeySet();
        chart.show((window, width) -> {
            askers.add(Thread.currentThread());
            return record.plot(window, width);
        });
        settle(chart);
        int before = chart.picturesDrawn();
        Control pane = chart.getChildren()[0];
        for (int i = 0; i < 40; i++) {
            wheel(pane, SWT.MOD1, 3, 450, 200);
        }
        settle(chart);
        // Forty turns come before the first picture is finished: it is drawn, and then only the last.
        int drawn = chart.picturesDrawn() - before;
        assertTrue(drawn >= 1 && drawn <= 2, drawn + " pictures for 40 turns of the wheel");
        assertTrue(!askers.isEmpty() && !askers.contains(Thread.currentThread()), askers.toString());
        ViewWindow window = chart.window().orElseThrow();
        double whole = SAMPLES * STEP;
        assertEquals(whole * Math.pow(1.25, -40), window.upperX() - window.lowerX(), whole * 1e-5);
        assertEquals(window.lowerX(), chart.picture().orElseThrow().layout().x().lower());
    }

    @Test
    void rejectsSamplesThatDoNotAdvance() {
        assertThrows(IllegalArgumentException.class, () -> source().with("b", 0, 0, samples, 1));
    }
}
