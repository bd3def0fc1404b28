// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.model.Mode;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.workbench.look.Ids;

class CompareTest {
    private static final String OVER = "4\u00a0\u03a9, B \u00b7 larkspur 2026";

    @TempDir
    Path folder;

    private Bench bench;
    private Path other;

    @BeforeEach
    void setUp() throws Exception {
        bench = new Bench(Files.createDirectory(folder.resolve("mine.ohmstead")));
        other = Files.createDirectory(folder.resolve("larkspur.ohmstead"));
        bench.otherFolder = Optional.of(other);
    }

    @AfterEach
    void tearDown() {
        bench.close();
    }

    private void opened() throws Exception {
        bench.withLog(Samples.many()).open().show();
        bench.until(
                "the study is shown",
                () -> Ids.exists(bench.shell, "power.readings")
                        && bench.find("power.readings", Table.class).getItemCount() > 0);
    }

    private Path copyOfTheLog() throws Exception {
        return Files.copy(bench.logFile(), other.resolve(TestLog.FILE_NAME));
    }

    private Table differences() {
        return bench.find("power.differences", Table.class);
    }

    private long rowsAgainst(String label) {
        return Arrays.stream(differences().getItems())
                .filter(row -> row.getText(1).equals(label))
                .count();
    }

    private String sentence() {
        return bench.find("power.compare.sentence", Label.class).getText();
    }

    private void add() {
        bench.select(bench.find("power.compare.add", Button.class));
    }

    private String drawnData() throws Exception {
        ChartCanvas chart = bench.find("power.chart", ChartCanvas.class);
        boolean[] done = new boolean[1];
        chart.whenDrawn(() -> done[0] = true);
        bench.until("the chart is drawn", () -> done[0]);
        Path file = folder.resolve("chart.csv");
        chart.export(file);
        return Files.readString(file);
    }

    @Test
    void aCopyOfTheLogDiffersByNothing() throws Exception {
        opened();
        Path log = copyOfTheLog();
        byte[] before = Files.readAllBytes(log);
        byte[] ownBefore = Files.readAllBytes(bench.logFile());
        int rows = differences().getItemCount();
        add();
        // 4 and 2 ohm in stereo, 4 ohm bridged.
        bench.until("the copy is compared", () -> rowsAgainst("larkspur 2026") == 3);
        assertEquals(rows + 3, differences().getItemCount());
        for (int row = 0; row < 3; row++) {
            assertEquals("This project", differences().getItem(row).getText(0));
            assertEquals("0.0", differences().getItem(row).getText(4));
            assertEquals("0.00", differences().getItem(row).getText(5));
            String means = differences().getItem(row).getText(7);
            assertTrue(means.contains("do not show that there is a difference"), means);
        }
        assertTrue(
                differences().getItem(0).getText(2).endsWith("13.8 V"),
                differences().getItem(0).getText(2));
        String drawn = drawnData();
        assertTrue(drawn.contains(OVER), drawn);
        assertEquals("", sentence());
        assertArrayEquals(before, Files.readAllBytes(log));
        assertArrayEquals(ownBefore, Files.readAllBytes(bench.logFile()));
        bench.select(bench.find("power.compare.remove.1", Button.class));
        bench.until("the copy is taken away", () -> differences().getItemCount() == rows);
        assertFalse(drawnData().contains("larkspur"));
        assertFalse(Ids.exists(bench.shell, "power.compare.label.1"));
    }

    @Test
    void theDifferencesFollowTheLine() throws Exception {
        opened();
        copyOfTheLog();
        add();
        bench.until("the copy is compared", () -> rowsAgainst("larkspur 2026") == 3);
        Text volts = bench.find("power.line.volts", Text.class);
        volts.setText("12.5");
        volts.notifyListeners(SWT.DefaultSelection, new Event());
        bench.until(
                "the differences are stated there",
                () -> differences().getItem(0).getText(2).endsWith("12.5 V"));
    }

    @Test
    void aReadingVoidedThereIsNotDrawn() throws Exception {
        opened();
        try (TestLog log = TestLog.open(copyOfTheLog())) {
            log.voidEntry("R0001", "loose", "N. N.");
        }
        PowerCurves open = Samples.study();
        CurveGroup group = open.groups().stream()
                .filter(each -> each.mode() == Mode.STEREO && each.endPoint().equals(Samples.ONE_PERCENT))
                .findFirst()
                .orElseThrow();
        LaidOver.Known known = OtherLog.read(other, Samples.amplifier(), 0.95, Samples.GOING_ON);
        assertEquals("larkspur 2026", known.label());
        Comparison comparison = Comparison.of(List.of(known), open, group);
        assertEquals(List.of(), comparison.sentences());
        ChannelChoice channels = new ChannelChoice.Single("B");
        PowerPlot beneath = PowerPlot.of(open, group, channels, Optional.empty(), false);
        PowerPlot plot = beneath.over(comparison, open, group, channels);
        Series own = beneath.plot().series().get(0);
        Series over = plot.plot().series().stream()
                .filter(each -> each.name().equals(OVER))
                .findFirst()
                .orElseThrow();
        assertEquals(Style.DASHED_LINE, over.style());
        assertEquals("4\u00a0\u03a9, B", own.name());
        assertEquals(own.tone(), over.tone());
        List<Mark.Point> rings = plot.plot().marks().stream()
                .filter(Mark.Point.class::isInstance)
                .map(Mark.Point.class::cast)
                .filter(mark ->
                        mark.shape() == MarkerShape.HOLLOW_CIRCLE && mark.tone().orElse(-1) == over.tone())
                .toList();
        // 12.5, 13.5 and 14.4 V; that at 11.5 V is voided.
        assertEquals(
                List.of(12.5, 13.5, 14.4), rings.stream().map(Mark.Point::x).toList());
        assertEquals(List.of("", "", "1"), rings.stream().map(Mark.Point::text).toList());
        assertEquals(beneath.sources(), plot.sources());
    }

    @Test
    void aMissingLogIsSaidAndNothingIsLaidOver() throws Exception {
        opened();
        int rows = differences().getItemCount();
        add();
        bench.until("it is said", () -> sentence().contains("There is no log"));
        assertEquals(rows, differences().getItemCount());
        assertFalse(Ids.exists(bench.shell, "power.compare.label.1"));
        assertTrue(bench.find("power.compare.sentence", Label.class).isVisible());
    }

    @Test
    void aFileThatIsNoLogIsSaid() throws Exception {
        Files.writeString(other.resolve(TestLog.FILE_NAME), "no database at all");
        opened();
        add();
        bench.until("it is said", () -> sentence().contains("is not a test log"));
    }

    @Test
    void aLogWithoutAValidReadingIsRefused() throws Exception {
        try (TestLog log = TestLog.open(other.resolve(TestLog.FILE_NAME))) {
            log.note("nothing yet", "N. N.");
        }
        TestLogException failure = assertThrows(
                TestLogException.class, () -> OtherLog.read(other, Samples.amplifier(), 0.95, Samples.GOING_ON));
        assertTrue(failure.getMessage().contains("no valid reading"), failure.getMessage());
    }

    @Test
    void whatTheOtherProjectDoesNotHaveIsSaid() throws Exception {
        try (TestLog log = TestLog.open(other.resolve(TestLog.FILE_NAME))) {
            log.append(Samples.bridged(4, 12));
            log.append(Samples.bridged(4, 14));
        }
        opened();
        add();
        bench.until("it is said", () -> sentence().contains("larkspur 2026 has no curve of this kind (stereo"));
    }

    @Test
    void theOpenProjectAndASecondTimeAreRefused() throws Exception {
        opened();
        copyOfTheLog();
        bench.otherFolder = Optional.of(bench.folder);
        add();
        assertTrue(sentence().contains("mine is the project that is open"), sentence());
        bench.otherFolder = Optional.of(other);
        add();
        bench.until("the copy is compared", () -> rowsAgainst("larkspur 2026") == 3);
        assertEquals("", sentence());
        add();
        assertEquals("That is laid over already.", sentence());
        assertFalse(Ids.exists(bench.shell, "power.compare.label.2"));
    }

    @Test
    void anotherKindOfPowerOfTheProjectIsLaidOver() throws Exception {
        opened();
        Combo kinds = bench.find("power.compare.kind", Combo.class);
        kinds.select(kinds.indexOf("Clipping onset"));
        bench.select(kinds);
        // Both kinds have 4 ohm in stereo, and the samples give both the same power.
        bench.until("the kinds are compared", () -> rowsAgainst("Clipping onset") == 1);
        assertEquals(
                "Distortion-limited, 1 % THD_F",
                differences().getItem(0).getText(0).replace('\u00a0', ' '));
        assertTrue(drawnData().contains("\u00b7 Clipping onset"));
    }

    @Test
    void nineAreLaidOverAtMost() throws Exception {
        opened();
        Button add = bench.find("power.compare.add", Button.class);
        for (int number = 1; number <= CompareBar.MOST; number++) {
            assertTrue(add.isEnabled());
            Path next = Files.createDirectories(folder.resolve(number + "/larkspur.ohmstead"));
            Files.copy(bench.logFile(), next.resolve(TestLog.FILE_NAME));
            bench.otherFolder = Optional.of(next);
            add();
        }
        assertFalse(add.isEnabled());
        // Of one name, they are told apart by a number.
        bench.until("all are compared", () -> rowsAgainst("larkspur 2026 (9)") == 3);
        assertEquals(3, rowsAgainst("larkspur 2026"));
        bench.select(bench.find("power.compare.remove.4", Button.class));
        assertTrue(add.isEnabled());
    }
}
