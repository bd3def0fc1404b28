// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProblemPlace;

/** A page comes in slices, so that the user interface's thread is never kept for long. */
class PageOpeningTest {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final int PASSES = 4;
    private static final double LARGEST_SHARE = 0.55;

    @TempDir
    Path temp;

    /** Opens a page in a window of its own, closes it, and returns the processor time of each event in microseconds. */
    private static List<Long> open(SectionStage stage, SectionPage page) {
        List<Long> times = new ArrayList<>();
        Shell shell = new Shell(stage.display);
        shell.setLayout(new FillLayout());
        shell.setSize(1000, 700);
        shell.open();
        stage.pump();
        long start = THREADS.getCurrentThreadCpuTime();
        page.create(shell, stage.desk);
        shell.layout();
        boolean more = true;
        while (more) {
            times.add((THREADS.getCurrentThreadCpuTime() - start) / 1_000);
            start = THREADS.getCurrentThreadCpuTime();
            more = stage.display.readAndDispatch();
        }
        shell.dispose();
        stage.pump();
        return times;
    }

    @ParameterizedTest
    @ValueSource(strings = {"amplifier", "bench", "parts", "loads", "plan", "sheet", "checks", "sharedlog"})
    void noSliceOfAPageTakesMostOfTheTime(String id) throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            SectionPage page = new SectionPages(List.of()).page(id).orElseThrow();
            // How fast the machine is says nothing here; the times themselves are judged in the whole workbench.
            double best = 1;
            for (int pass = 0; pass < PASSES; pass++) {
                List<Long> times = open(stage, page);
                long longest = times.stream().mapToLong(Long::longValue).max().orElseThrow();
                long all = times.stream().mapToLong(Long::longValue).sum();
                best = Math.min(best, longest / (double) all);
            }
            assertTrue(best <= LARGEST_SHARE, "one event took " + best + " of the processor time of the opening");
        }
    }

    @Test
    void aPlaceIsRevealedOnceItIsThere() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.shell.open();
            SectionControl control =
                    new SectionPages(List.of()).page("amplifier").orElseThrow().create(stage.shell, stage.desk);
            stage.shell.layout();
            control.reveal(ProblemPlace.parse("$.amplifier.ratings[2].powerWatts"));
            assertFalse(Ids.exists(stage.shell, "ratings.table"));
            stage.pump();
            Table ratings = stage.table("ratings");
            stage.waitFor(ratings::isFocusControl);
            assertEquals(2, ratings.getSelectionIndex());
        }
    }

    @Test
    void whatComesLaterHasItsRoomToo() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new SectionPages(List.of()).page("amplifier").orElseThrow());
            for (String table : new String[] {"lowestloads", "fuses", "ratings"}) {
                assertTrue(
                        stage.table(table).getSize().y > 60,
                        table + " is " + stage.table(table).getSize());
            }
        }
    }

    @Test
    void theKeyboardIsLeftWhereTheUserPutItMeanwhile() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            Composite elsewhere = new Composite(stage.shell, 0);
            stage.shell.open();
            SectionControl control =
                    new SectionPages(List.of()).page("sheet").orElseThrow().create(stage.shell, stage.desk);
            stage.shell.layout();
            control.setFocus();
            stage.waitFor(elsewhere::forceFocus);
            stage.pump();
            stage.waitFor(elsewhere::isFocusControl);
        }
    }

    @Test
    void theFirstFieldGetsTheKeyboardOnceItIsThere() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.shell.open();
            stage.waitFor(() -> stage.display.getActiveShell() == stage.shell);
            SectionControl control =
                    new SectionPages(List.of()).page("sheet").orElseThrow().create(stage.shell, stage.desk);
            stage.shell.layout();
            control.setFocus();
            stage.pump();
            stage.waitFor(stage.find("sheet.title", Text.class)::isFocusControl);
        }
    }
}
