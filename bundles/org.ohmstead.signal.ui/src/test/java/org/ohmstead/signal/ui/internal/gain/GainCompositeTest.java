// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.signal.ui.internal.LoggedSweep;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;

/** The whole composite in a bare shell, with a project and a log made for it. */
class GainCompositeTest {
    private static final long DEADLINE_SECONDS = 60;

    @TempDir
    Path folder;

    private final Display display = Display.getDefault();
    private final ProjectDesk desk = new ProjectDesk(new DirectWork(display), Clock.systemUTC());
    private Shell shell;
    private GainComposite gain;

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(1_060, 560);
        gain = new GainComposite(shell, desk);
        shell.open();
        await(() -> gain.kept().isPresent());
        pump();
    }

    @AfterEach
    void close() {
        desk.setDisplay(DisplaySettings.USUAL);
        shell.dispose();
        desk.dispose();
        pump();
    }

    private void pump() {
        while (display.readAndDispatch()) {
            assertFalse(display.isDisposed());
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

    private LoggedSweep openSweep() throws Exception {
        LoggedSweep sweep = LoggedSweep.in(folder);
        desk.open(sweep.folder(), Unsaved.REFUSE, session -> {}, failure -> {
            throw new IllegalStateException(failure);
        });
        await(() -> desk.session().isPresent() && !desk.log().entries().isEmpty());
        pump();
        return sweep;
    }

    private <C extends Control> C find(String id, Class<C> type) {
        return Ids.find(gain, id, type);
    }

    private String label(String id) {
        return find(id, Label.class).getText();
    }

    private void enter(String id, String text) {
        Text field = find(id, Text.class);
        field.setText(text);
        field.notifyListeners(SWT.DefaultSelection, new Event());
        pump();
    }

    private void type(String id, String text) {
        find(id, Text.class).setText(text);
        pump();
    }

    private String figure(String name) {
        return Arrays.stream(find("gain.table", Table.class).getItems())
                .filter(item -> item.getText(0).equals(name))
                .map(item -> item.getText(1) + " " + item.getText(2))
                .findFirst()
                .orElse("");
    }

    @Test
    void typedFiguresAreWorkedOutAtOnce() {
        enter("gain.fullScale", "5");
        enter("gain.power", "100");
        enter("gain.load", "4R0");
        // Closed form: 5 V x 10^(-10/20) = 1.581 V; 20 log10(20 / 1.581) = 22.04 dB.
        assertEquals("1.581 V", figure("Sensitivity, RMS"));
        assertEquals("22.04 dB", figure("Gain, input to load"));
        assertTrue(label("gain.summary").startsWith("Set the gain to 22.04 dB"), label("gain.summary"));
        assertTrue(label("gain.turn").contains("-30 dBFS (0.158 V)"), label("gain.turn"));
        assertTrue(label("gain.caution").contains("loudspeakers off"), label("gain.caution"));
        assertTrue(find("gain.diagram", LevelDiagram.class).words().contains("20.0 V, 100 W"));
        enter("gain.overlap", "0");
        assertEquals("12.04 dB", figure("Gain, input to load"));
        Button bridged = find("gain.bridged", Button.class);
        bridged.setSelection(true);
        bridged.notifyListeners(SWT.Selection, new Event());
        pump();
        assertEquals("6.02 dB", figure("Gain of each channel"));
        assertTrue(label("gain.caution").contains("each channel sees 2.00 \u03a9"), label("gain.caution"));
    }

    @Test
    void whatCannotBeIsRefusedBesideItsField() {
        String before = figure("Gain, input to load");
        enter("gain.power", "-5");
        assertTrue(label("gain.power.message").contains("above 0"), label("gain.power.message"));
        assertEquals("Power in the load: It must be above 0.", label("gain.turn"));
        enter("gain.power", "50");
        assertTrue(label("gain.turn").startsWith("Play a sine"), label("gain.turn"));
        enter("gain.check", "3");
        assertTrue(label("gain.check.message").contains("between -100 and 0"), label("gain.check.message"));
        assertEquals(before, figure("Gain, input to load"));
    }

    @Test
    void theMetersReadingSaysByHowMuchToTurn() {
        enter("gain.fullScale", "5");
        enter("gain.power", "100");
        // The meter should read 2 V; 2.2444 V are 1 dB more: 2 x 10^(1/20).
        type("gain.reads", "2.24404");
        assertEquals("Turn the gain down by 1 dB.", label("gain.turn"));
        type("gain.reads", "1");
        assertEquals("Turn the gain up by 6.02 dB.", label("gain.turn"));
        type("gain.reads", "2");
        assertEquals("The gain is right within 0 dB.", label("gain.turn"));
        type("gain.reads", "x");
        assertTrue(label("gain.turn").startsWith("Play a sine"), label("gain.turn"));
    }

    @Test
    void twoTypedReadingsAreComparedWithEachKey() {
        assertTrue(label("gain.balance.result").startsWith("Type the meter's reading"));
        type("gain.balance.first", "20.0");
        type("gain.balance.second", "19.5");
        // Closed form: 20 log10(20 / 19.5) = 0.2199 dB, (20 / 19.5)^2 = 1.0519.
        assertEquals(
                "Channel A is 0.22 dB above channel B (1.05 times the power): within 0.5 dB.",
                label("gain.balance.result"));
        type("gain.balance.second", "19.55");
        assertTrue(label("gain.balance.result").contains("0.2 dB above"), label("gain.balance.result"));
        type("gain.balance.tolerance", "0.1");
        assertTrue(label("gain.balance.result").endsWith("Turn A down or B up."), label("gain.balance.result"));
    }

    @Test
    void theProjectGivesRatingAndPresentGain() throws Exception {
        LoggedSweep sweep = openSweep();
        Combo rating = find("gain.rating", Combo.class);
        assertEquals("4-ohm", rating.getText());
        assertEquals(sweep.project().amplifier().ratings().size() + 1, rating.getItemCount());
        assertEquals("90", find("gain.power", Text.class).getText());
        // The sweep's drive is relative to 40 V peak: with 2 V at full scale the gain is 20 log10(40 / sqrt(2) / 2).
        assertEquals("23.01 dB", figure("Channel A"));
        assertEquals("23.01 dB", figure("Channel B"));
        // 90 W in 4 ohm are 18.974 V from 2 V x 10^(-10/20): 29.54 dB.
        assertEquals("29.54 dB", figure("Gain, input to load"));
        assertEquals("+6.53 dB", figure("Change to make"));
        rating.select(rating.indexOf("bridged-4-ohm"));
        rating.notifyListeners(SWT.Selection, new Event());
        pump();
        assertEquals("350", find("gain.power", Text.class).getText());
        assertTrue(find("gain.bridged", Button.class).getSelection());
        assertEquals("", figure("Channel A"));
        assertTrue(label("gain.present").startsWith("The log does not tell"), label("gain.present"));
        enter("gain.power", "300");
        assertEquals("typed freely", rating.getText());
    }

    @Test
    void theBalanceFollowsTheLog() throws Exception {
        LoggedSweep sweep = openSweep();
        Button follow = find("gain.balance.follow", Button.class);
        follow.setSelection(true);
        follow.notifyListeners(SWT.Selection, new Event());
        pump();
        // Both channels give 24 V peak at the highest clean level of the sweep.
        assertEquals(
                24 / Math.sqrt(2),
                Double.parseDouble(find("gain.balance.first", Text.class).getText()),
                1e-3);
        assertTrue(label("gain.balance.result").startsWith("By " + sweep.entry().id()), label("gain.balance.result"));
        desk.voidEntry(sweep.entry().id(), "N. N.", "wrong lead", failure -> {
            throw new IllegalStateException(failure);
        });
        await(() -> label("gain.balance.result").startsWith("The log has no reading"));
        assertEquals("", figure("Channel A"));
        type("gain.balance.first", "10");
        assertFalse(follow.getSelection());
    }

    @Test
    void numbersFollowTheUsersDecimalSign() {
        enter("gain.fullScale", "5");
        type("gain.balance.first", "20.5");
        desk.setDisplay(new DisplaySettings(2, true));
        pump();
        assertEquals("1,581 V", figure("Sensitivity, RMS"));
        assertEquals("20,5", find("gain.balance.first", Text.class).getText());
        assertTrue(label("gain.summary").contains("1,58 V"), label("gain.summary"));
    }

    @Test
    void anEarlierSessionGoesOn() {
        GainComposite other = new GainComposite(shell, desk);
        other.restore(new Kept(4.5, 6));
        assertEquals(Optional.of(new Kept(4.5, 6)), other.kept());
        await(() -> Ids.exists(other, "gain.caution"));
        pump();
        assertEquals("4.5", Ids.find(other, "gain.fullScale", Text.class).getText());
        assertEquals("6", Ids.find(other, "gain.overlap", Text.class).getText());
    }

    @Test
    void theDiagramIsDrawnInMuchAndInLittleRoom() {
        for (int[] size : new int[][] {{480, 360}, {200, 120}, {900, 700}}) {
            LevelDiagram diagram = find("gain.diagram", LevelDiagram.class);
            diagram.setSize(size[0], size[1]);
            Image picture = new Image(display, size[0], size[1]);
            GC gc = new GC(picture);
            diagram.print(gc);
            gc.dispose();
            int[] row = new int[size[0]];
            int inks = 0;
            for (int y = 0; y < size[1]; y += 2) {
                picture.getImageData().getPixels(0, y, size[0], row, 0);
                inks += (int) Arrays.stream(row).distinct().count() - 1;
            }
            picture.dispose();
            assertTrue(inks > 20, size[0] + "x" + size[1] + ": " + inks);
        }
    }
}
