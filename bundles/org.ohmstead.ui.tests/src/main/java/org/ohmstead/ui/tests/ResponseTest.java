// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.PartInitException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.Sections;

/** Nothing that the user does keeps the user interface's thread for long by code of ours. */
class ResponseTest {
    private static final int WARM_UPS = 2;

    /** What takes long by itself does so each time; what the compiler or the collector adds does not. */
    private static final int TRIES = 3;

    /** What one event may take while classes are loaded: half a second is when one begins to wonder. */
    private static final int ALLOWED_COLD_MILLISECONDS = 400;

    static final String[] VIEWS = {
        "org.ohmstead.workbench.navigator",
        "org.ohmstead.workbench.problems",
        "org.ohmstead.testlog.ui.log",
        "org.ohmstead.testlog.ui.pair",
        "org.ohmstead.testlog.ui.audit",
        "org.ohmstead.curves.ui.power",
        "org.ohmstead.signal.ui.capture",
        "org.ohmstead.signal.ui.gain",
        "org.ohmstead.signal.ui.stimulus",
        "org.ohmstead.sound.ui.vehicle",
        "org.ohmstead.lessons.ui.lessons",
        "org.ohmstead.report.ui.sheet",
        "org.ohmstead.load.ui.design",
        "org.ohmstead.load.ui.bank",
        "org.ohmstead.thermal.ui.forecast",
        "org.ohmstead.thermal.ui.calculator",
        "org.ohmstead.thermal.ui.identify",
        "org.ohmstead.measure.ui.console",
        "org.ohmstead.history.ui.quality",
        "org.ohmstead.history.ui.compare"
    };
    static final String[] PAGES = {"$.amplifier", "$.bench", "$.bench.parts", "$.loads", "$.plan", "$.sheet"};

    private final Bench bench = Bench.running();

    @TempDir
    Path folder;

    @Test
    void workingInOpenViewsNeverStalls() throws Exception {
        bench.open(DemoLog.copyInto(folder));
        bench.awaitEntries(Bench.DEMO_READINGS);
        bench.perspective("org.ohmstead.app.results");
        bench.view("org.ohmstead.testlog.ui.log");
        bench.view("org.ohmstead.curves.ui.power");
        bench.go("$.amplifier.ratings[0].powerWatts");
        int pass = 0;
        List<StallWatch.Stall> stalls;
        do {
            bench.pump().stalls().clear(); // the first passes load classes and warm the compiler up
            work(pass);
            stalls = bench.pump().stalls().ours();
            pass++;
        } while (again(pass, stalls));
        bench.reportStalls("ResponseTest");
        bench.close();
        assertNone(stalls);
    }

    @Test
    void openingViewsAndPagesNeverStalls() throws Exception {
        bench.open(DemoLog.copyInto(folder));
        bench.awaitEntries(Bench.DEMO_READINGS);
        bench.perspective("org.ohmstead.app.results");
        bench.desk().choose(bench.desk().log().entries().stream().findFirst());
        closeAll();
        bench.pump().stalls().clear();
        openAll();
        List<StallWatch.Stall> cold = bench.pump().stalls().oursOver(ALLOWED_COLD_MILLISECONDS);
        bench.reportStalls("ResponseTest-first-opening");
        int pass = 0;
        List<StallWatch.Stall> stalls;
        do {
            closeAll();
            bench.pump().stalls().clear();
            openAll();
            stalls = bench.pump().stalls().ours();
            pass++;
        } while (again(pass, stalls));
        bench.reportStalls("ResponseTest-opening");
        bench.perspective("org.ohmstead.app.results");
        bench.page().resetPerspective();
        bench.close();
        assertNone(cold);
        assertNone(stalls);
    }

    private static boolean again(int passes, List<StallWatch.Stall> stalls) {
        return passes <= WARM_UPS || !stalls.isEmpty() && passes < WARM_UPS + TRIES;
    }

    private static void assertNone(List<StallWatch.Stall> stalls) {
        assertTrue(
                stalls.isEmpty(),
                stalls.stream().map(StallWatch.Stall::toString).collect(Collectors.joining("\n")));
    }

    /** Opens every view and every page, each by an event as when the user asks for it. */
    private void openAll() {
        for (String view : VIEWS) {
            bench.display().asyncExec(() -> {
                try {
                    bench.page().showView(view);
                } catch (PartInitException e) {
                    throw new AssertionError(e);
                }
            });
            bench.pump().settle();
        }
        for (String where : PAGES) {
            bench.display().asyncExec(() -> Sections.open(bench.page(), where));
            bench.pump().settle();
        }
    }

    private void closeAll() {
        bench.page().closeAllEditors(false);
        for (String view : VIEWS) {
            IViewPart open = bench.page().findView(view);
            if (open != null) {
                bench.page().hideView(open);
            }
        }
        bench.pump().settle();
    }

    private void work(int pass) throws Exception {
        Text filter = bench.find("log.filter", Text.class);
        for (String words : new String[] {"4ohm", "4ohm burst", ""}) {
            filter.setText(words);
            bench.pump().settle();
        }
        for (LogEntry entry : bench.desk().log().entries().subList(0, 4)) {
            bench.desk().choose(Optional.of(entry));
            bench.pump().settle();
        }
        ChartCanvas chart = bench.find("power.chart", ChartCanvas.class);
        chart.zoomTo(ViewWindow.ofX(12, 14));
        chart.moveCursorTo(13);
        bench.pump().settle();
        chart.resetZoom();
        bench.go("$.amplifier.ratings[0].powerWatts");
        Table table = (Table) bench.display().getFocusControl();
        bench.key(table, 0, SWT.F2, (char) 0);
        Text cell = bench.find("ratings.entry", Text.class);
        cell.setText((100 + pass) + " W");
        bench.key(cell, 0, SWT.CR, SWT.CR);
        bench.command(IWorkbenchCommandConstants.EDIT_UNDO);
        bench.command(IWorkbenchCommandConstants.EDIT_REDO);
    }
}
