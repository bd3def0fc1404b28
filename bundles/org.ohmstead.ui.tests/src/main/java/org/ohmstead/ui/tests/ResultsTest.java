// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Ids;

/** The views on results: filter and void in the log, zoom and read the chart, look at a capture, publish the sheet. */
class ResultsTest {
    private final Bench bench = Bench.running();

    @TempDir
    Path folder;

    @BeforeEach
    void open() throws Exception {
        Path project = DemoLog.copyInto(folder);
        bench.perspective("org.ohmstead.app.results");
        bench.open(project);
        bench.awaitEntries(Bench.DEMO_READINGS);
    }

    @AfterEach
    void close() throws Exception {
        bench.close();
        bench.reportStalls(getClass().getSimpleName());
    }

    @Test
    void theLogIsFilteredByTyping() throws Exception {
        bench.view("org.ohmstead.testlog.ui.log");
        Table table = bench.find("log.table", Table.class);
        bench.pump().until(() -> table.getItemCount() == Bench.DEMO_READINGS, () -> table.getItemCount() + " rows");
        long burst = bench.desk().log().entries().stream()
                .filter(entry -> entry.reading().orElseThrow().stepId().contains("burst"))
                .count();
        bench.find("log.filter", Text.class).setText("burst");
        bench.pump()
                .until(() -> table.getItemCount() == burst, () -> table.getItemCount() + " rows instead of " + burst);
        String count = bench.find("log.filter.count", Label.class).getText();
        assertTrue(count.contains(burst + " of " + Bench.DEMO_READINGS), count);
        bench.find("log.filter", Text.class).setText("");
        bench.pump().until(() -> table.getItemCount() == Bench.DEMO_READINGS, () -> table.getItemCount() + " rows");
    }

    @Test
    void aReadingIsVoidedWithAReason() throws Exception {
        bench.view("org.ohmstead.testlog.ui.log");
        Table table = bench.find("log.table", Table.class);
        bench.pump().until(() -> table.getItemCount() == Bench.DEMO_READINGS, () -> table.getItemCount() + " rows");
        table.setSelection(0);
        bench.send(table, SWT.Selection);
        LogEntry chosen = bench.desk().chosenEntry().orElseThrow();
        bench.press(bench.find("log.void", Widget.class));
        bench.find("log.void.reason", Text.class).setText("Load lead came loose.");
        bench.find("log.void.operator", Text.class).setText("Test");
        bench.pump().settle();
        bench.press(bench.find("log.void.commit", Widget.class));
        bench.pump()
                .until(() -> bench.desk().log().entry(chosen.id()).orElseThrow().voided(), "The entry was not voided.");
        assertEquals(Bench.DEMO_READINGS + 1, bench.desk().log().entries().size());
        assertEquals(
                "Load lead came loose.",
                bench.desk()
                        .log()
                        .entry(chosen.id())
                        .orElseThrow()
                        .voidedBy()
                        .orElseThrow()
                        .reason());
    }

    @Test
    void theChartIsZoomedAndRead() throws Exception {
        bench.view("org.ohmstead.curves.ui.power");
        ChartCanvas chart = bench.find("power.chart", ChartCanvas.class);
        bench.pump().until(() -> chart.message().isEmpty(), "The curves were not fitted.");
        boolean[] drawn = new boolean[1];
        chart.whenDrawn(() -> drawn[0] = true);
        bench.pump().until(() -> drawn[0], "The chart was not drawn.");
        chart.zoomTo(ViewWindow.ofX(13, 14.5));
        bench.pump().settle();
        assertEquals(13, chart.window().orElseThrow().lowerX(), 1e-9);
        chart.moveCursorTo(14.4);
        bench.pump().settle();
        PlotReadOut read = chart.readOut().orElseThrow();
        assertTrue(!read.entries().isEmpty(), read.sentence());
        // The readings bracket what the curve says at the cursor: the chart shows the same project as the log.
        double most = bench.desk().log().validReadings().stream()
                .mapToDouble(reading -> reading.weakestChannel().powerWatts())
                .max()
                .orElseThrow();
        assertTrue(read.entries().stream().allMatch(entry -> entry.y() > 0 && entry.y() < 1.5 * most), read.sentence());
    }

    @Test
    void theCaptureOfAReadingIsAnalysed() throws Exception {
        bench.view("org.ohmstead.signal.ui.capture");
        bench.desk().choose(bench.desk().log().entries().stream().findFirst());
        bench.pump()
                .until(
                        () -> Ids.exists(bench.shell(), "capture.level")
                                && bench.find("capture.title", Label.class)
                                                .getText()
                                                .length()
                                        > 0,
                        "The capture was not shown.");
        bench.pump().settle();
        bench.picture("capture-light");
    }

    @Test
    void theSheetIsShownAndPublished() throws Exception {
        bench.view("org.ohmstead.report.ui.sheet");
        Table ratings = bench.find("sheet.ratings", Table.class);
        int claims = bench.session().project().amplifier().ratings().size();
        bench.pump().until(() -> ratings.getItemCount() == claims, () -> ratings.getItemCount() + " rating rows");
        bench.press(bench.find("sheet.publish", Widget.class));
        Path sheets = bench.session().sheetsFolder();
        bench.pump().until(() -> count(sheets, ".pdf") >= 1 && count(sheets, ".html") >= 1, "No sheet was written.");
        bench.pump().settle();
        try (Stream<Path> files = Files.list(sheets)) {
            Path pdf = files.filter(file -> file.toString().endsWith(".pdf"))
                    .findFirst()
                    .orElseThrow();
            assertTrue(Files.size(pdf) > 10_000, pdf + " is too small");
        }
    }

    private static long count(Path folder, String ending) {
        String[] names = folder.toFile().list((parent, name) -> name.endsWith(ending));
        return names == null ? 0 : names.length;
    }
}
