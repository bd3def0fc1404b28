// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.signal.ui.internal.LoggedSweep;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;

/** The capture view on a German machine. */
class CaptureInGermanTest {
    private static final long DEADLINE_SECONDS = 60;

    @TempDir
    Path folder;

    private final Display display = Display.getDefault();
    private final ProjectDesk desk = new ProjectDesk(new HeldWork(display), Clock.systemUTC());
    private final String before = System.getProperty(Language.PROPERTY);
    private Shell shell;
    private CaptureComposite captures;

    @BeforeEach
    void open() {
        System.setProperty(Language.PROPERTY, "de");
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(1_250, 760);
        captures = new CaptureComposite(shell, desk);
        shell.open();
        pump();
    }

    @AfterEach
    void close() {
        shell.dispose();
        desk.dispose();
        pump();
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    private void pump() {
        while (display.readAndDispatch()) {
            continue;
        }
    }

    private void await(BooleanSupplier condition) {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(DEADLINE_SECONDS);
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < deadline, "not in time");
            if (!display.readAndDispatch()) {
                display.timerExec(20, () -> {});
                display.sleep();
            }
        }
    }

    @Test
    void speaksGerman() throws Exception {
        assertEquals(
                Optional.of("Im Pr\u00fcfprotokoll eine Ablesung w\u00e4hlen oder eine Aufnahmedatei \u00f6ffnen."),
                Ids.find(captures, "capture.waveform", ChartCanvas.class).message());
        assertEquals(
                "Werte &kopieren",
                Ids.find(captures, "capture.copy", Button.class).getText());
        LoggedSweep sweep = LoggedSweep.in(folder);
        desk.open(sweep.folder(), Unsaved.REFUSE, session -> {}, failure -> {
            throw new IllegalStateException(failure);
        });
        await(() -> desk.session().isPresent());
        desk.choose(Optional.of(sweep.entry()));
        String level = Ids.find(captures, "capture.level", Combo.class).getText();
        assertTrue(level.contains("dem Endpunkt am n\u00e4chsten"), level);
        Table figures = Ids.find(captures, "capture.figures", Table.class);
        await(() -> figures.getItemCount() > 0);
        pump();
        assertEquals("Gr\u00f6\u00dfe", figures.getColumn(0).getText());
        List<String> names =
                Arrays.stream(figures.getItems()).map(TableItem::getText).toList();
        assertTrue(names.containsAll(List.of("Frequenz", "Leistung", "\u00dcbersteuerung")), names.toString());
    }
}
