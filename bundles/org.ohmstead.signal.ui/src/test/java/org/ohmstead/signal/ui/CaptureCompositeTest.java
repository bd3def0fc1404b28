// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
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
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.signal.ui.internal.LoggedSweep;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;

/** The whole composite in a bare shell, with a project and a log made for it. */
class CaptureCompositeTest {
    private static final long DEADLINE_SECONDS = 60;

    @TempDir
    Path folder;

    private final Display display = Display.getDefault();
    private final HeldWork work = new HeldWork(display);
    private final ProjectDesk desk = new ProjectDesk(work, Clock.systemUTC());
    private Shell shell;
    private CaptureComposite captures;

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(1_250, 760);
        captures = new CaptureComposite(shell, desk);
        shell.open();
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
        await(() -> desk.session().isPresent());
        return sweep;
    }

    private <C extends Control> C find(String id, Class<C> type) {
        return Ids.find(captures, id, type);
    }

    private void press(String id) {
        find(id, Button.class).notifyListeners(SWT.Selection, new Event());
        pump();
    }

    private String figure(String name, int column) {
        pump(); // the tables come in slices
        for (var item : find("capture.figures", Table.class).getItems()) {
            if (item.getText(0).equals(name)) {
                return item.getText(column);
            }
        }
        throw new IllegalArgumentException("name is " + name + "; it must be a figure of the table");
    }

    private ChartCanvas waveform() {
        return find("capture.waveform", ChartCanvas.class);
    }

    @Test
    void saysWhatToDoWhileThereIsNothing() {
        assertEquals(
                Optional.of("Choose a reading in the test log, or open a capture file."),
                waveform().message());
        assertFalse(find("capture.copy", Button.class).getEnabled());
        assertFalse(find("capture.level", Combo.class).getEnabled());
    }

    @Test
    void showsTheEndPointOfTheChosenReadingAndStepsThroughItsLevels() throws Exception {
        LoggedSweep sweep = openSweep();
        desk.choose(Optional.of(sweep.entry()));
        Combo level = find("capture.level", Combo.class);
        assertEquals(4, level.getItemCount());
        assertTrue(level.getText().contains("nearest to the end point"), level.getText());
        assertTrue(find("capture.title", Label.class).getText().startsWith("R0001"));
        while (level.getSelectionIndex() > 0) {
            press("capture.lower");
        }
        // 12 V peak in both channels.
        assertEquals(12 / Math.sqrt(2), Double.parseDouble(figure("Output, RMS", 2)), 1e-3);
        assertEquals(12 / Math.sqrt(2), Double.parseDouble(figure("Output, RMS", 3)), 1e-3);
        assertFalse(find("capture.lower", Button.class).getEnabled());
        press("capture.higher");
        press("capture.higher");
        press("capture.higher");
        assertEquals("both sides", figure("Clipping", 2));
        // A sine of 34 V cut at 27 V: 20 log10(34 / 27) dB.
        assertEquals(20 * Math.log10(34 / 27.0), Double.parseDouble(figure("Drive over onset", 2)), 0.1);
        assertEquals(20, find("capture.harmonics", Table.class).getItemCount());
    }

    @Test
    void showsFiveCyclesAndTheWholeOnDemand() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        await(() -> waveform().window().isPresent());
        assertEquals(
                5,
                waveform().window().get().upperX() - waveform().window().get().lowerX(),
                0.01);
        press("capture.whole");
        await(() -> waveform().window().isEmpty());
        press("capture.higher");
        assertTrue(waveform().window().isEmpty(), "the user's window stays");
        press("capture.few-cycles");
        assertTrue(waveform().window().isPresent());
    }

    @Test
    void keepsTheUsersChannelsFromLevelToLevelAndAlwaysOneOfThem() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        Button a = find("capture.channel.a", Button.class);
        a.setSelection(false);
        press("capture.channel.a");
        press("capture.lower");
        assertFalse(find("capture.channel.a", Button.class).getSelection());
        Button b = find("capture.channel.b", Button.class);
        b.setSelection(false);
        press("capture.channel.b");
        assertTrue(b.getSelection());
    }

    @Test
    void saysPlainlyThatACaptureWasChangedAndShowsNothingOfIt() throws Exception {
        LoggedSweep sweep = openSweep();
        desk.choose(Optional.of(sweep.entry()));
        Path file = sweep.captureFile(0);
        byte[] content = Files.readAllBytes(file);
        content[content.length - 1] ^= 1;
        Files.write(file, content);
        Combo level = find("capture.level", Combo.class);
        level.select(0);
        level.notifyListeners(SWT.Selection, new Event());
        assertTrue(find("capture.message", Label.class).getText().contains("was changed after it was logged"));
        assertEquals(0, find("capture.figures", Table.class).getItemCount());
        press("capture.higher");
        assertEquals(24 / Math.sqrt(2), Double.parseDouble(figure("Output, RMS", 2)), 2e-3);
        assertEquals("", find("capture.message", Label.class).getText());
    }

    @Test
    void letsTheLatestChoiceWin() throws Exception {
        LoggedSweep sweep = openSweep();
        work.hold = true;
        desk.choose(Optional.of(sweep.entry()));
        Combo level = find("capture.level", Combo.class);
        for (int index : new int[] {0, 3, 1}) {
            level.select(index);
            level.notifyListeners(SWT.Selection, new Event());
        }
        assertEquals(4, work.held.size());
        while (!work.held.isEmpty()) {
            work.held.remove().run();
        }
        assertEquals(3, work.cancelled);
        assertEquals(24 / Math.sqrt(2), Double.parseDouble(figure("Output, RMS", 2)), 2e-3);
    }

    @Test
    void stopsOnDemand() throws Exception {
        LoggedSweep sweep = openSweep();
        work.hold = true;
        desk.choose(Optional.of(sweep.entry()));
        press("capture.stop");
        work.held.remove().run();
        assertEquals(1, work.cancelled);
        assertTrue(find("capture.message", Label.class).getText().startsWith("Stopped"));
    }

    @Test
    void asksForVoltsPerFullScaleOfAFile() throws Exception {
        LoggedSweep sweep = LoggedSweep.in(folder);
        captures.askForFile(sweep.captureFile(1));
        Text volts = find("capture.file.full-scale", Text.class);
        press("capture.file.read");
        Label message = find("capture.file.message", Label.class);
        assertTrue(message.getText().startsWith("Volts per full scale"), message.getText());
        volts.setText("-3 V");
        press("capture.file.read");
        assertEquals("Volts per full scale must be above 0.", message.getText());
        volts.setText("60 V");
        find("capture.file.load", Text.class).setText("4R0");
        press("capture.file.read");
        assertEquals("", message.getText());
        // 24 V peak into 4 ohms: 24^2 / 2 / 4 = 72 W.
        assertEquals(72, Double.parseDouble(figure("Power", 2)), 0.05);
        press("capture.file.close");
        assertEquals(0, find("capture.figures", Table.class).getItemCount());
        assertTrue(waveform().message().isPresent());
    }

    @Test
    void saysWhyAFileCannotBeRead() throws Exception {
        Path file = Files.write(folder.resolve("broken.wav"), new byte[] {'R', 'I', 'F', 'F', 0, 0});
        captures.askForFile(file);
        find("capture.file.full-scale", Text.class).setText("1");
        press("capture.file.read");
        assertTrue(find("capture.message", Label.class).getText().contains("broken.wav"));
    }

    @Test
    void readsTheDistanceFromAMark() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        await(() -> waveform().window().isPresent());
        Label line = find("capture.waveform.cursor", Label.class);
        boolean[] drawn = {false};
        waveform().whenDrawn(() -> drawn[0] = true);
        await(() -> drawn[0]);
        double from = Math.ceil(waveform().window().get().lowerX());
        waveform().moveCursorTo(from);
        await(() -> line.getText().contains("   A "));
        Event key = new Event();
        key.character = 'm';
        key.keyCode = 'm';
        Ids.find(waveform(), "chart.pane", Control.class).notifyListeners(SWT.KeyDown, key);
        waveform().moveCursorTo(from + 2);
        await(() -> line.getText().contains("\u0394t 2.0000 ms"));
        assertTrue(line.getText().contains("1/\u0394t 500.00 Hz"), line.getText());
    }

    @Test
    void copiesTheFigures() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        press("capture.copy");
        Clipboard clipboard = new Clipboard(display);
        Object content = clipboard.getContents(TextTransfer.getInstance());
        clipboard.dispose();
        assertTrue(String.valueOf(content).contains("Figure\tUnit\tA\tB\n"), String.valueOf(content));
    }

    @Test
    void numbersAreShownAsTheUserWants() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        String frequency = figure("Frequency", 2);
        String volts = figure("Output, RMS", 2);
        Combo level = find("capture.level", Combo.class);
        int chosen = level.getSelectionIndex();
        String levelText = level.getText();
        desk.setDisplay(new DisplaySettings(3, true));
        pump();
        assertEquals(frequency.replace('.', ','), figure("Frequency", 2));
        assertEquals(volts.replace('.', ','), figure("Output, RMS", 2));
        assertEquals(chosen, level.getSelectionIndex());
        assertEquals(levelText.replace('.', ','), level.getText());
        Event event = new Event();
        event.item = find("capture.figures", Table.class).getItem(1);
        find("capture.figures", Table.class).notifyListeners(SWT.Selection, event);
        String text = find("capture.explanation", Label.class).getText();
        assertTrue(text.contains("V (k = 3, 99,7 %)"), text);
        await(() -> waveform().window().isPresent());
        Label line = find("capture.waveform.cursor", Label.class);
        waveform().moveCursorTo(waveform().window().get().lowerX() + 0.5);
        await(() -> line.getText().contains("   A "));
        assertTrue(line.getText().contains(",") && !line.getText().contains("."), line.getText());
        press("capture.copy");
        Clipboard clipboard = new Clipboard(display);
        String copied = (String) clipboard.getContents(TextTransfer.getInstance());
        clipboard.dispose();
        assertTrue(copied.contains("\nOutput, RMS\tV\t" + volts + "\t"), copied);
    }

    @Test
    void explainsTheChosenFigure() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        Table figures = find("capture.figures", Table.class);
        await(() -> figures.getItemCount() > 1);
        Event event = new Event();
        event.item = figures.getItem(1);
        figures.notifyListeners(SWT.Selection, event);
        String text = find("capture.explanation", Label.class).getText();
        assertTrue(text.contains("A: U = ") && text.contains("B: U = "), text);
    }

    @Test
    void stacksThePlotsInANarrowView() {
        assertEquals(SWT.HORIZONTAL, find("capture.plots", SashForm.class).getOrientation());
        shell.setSize(700, 760);
        await(() -> find("capture.plots", SashForm.class).getOrientation() == SWT.VERTICAL);
    }

    @Test
    void showsTheFiguresInsteadOfTheChartsWhereThereIsNoRoomForBoth() {
        Button figures = find("capture.show-figures", Button.class);
        assertFalse(figures.getVisible());
        shell.setSize(480, 640);
        await(figures::getVisible);
        await(() ->
                waveform().isVisible() && !find("capture.figures", Table.class).isVisible());
        figures.setSelection(true);
        press("capture.show-figures");
        await(() ->
                !waveform().isVisible() && find("capture.figures", Table.class).isVisible());
        shell.setSize(1_250, 760);
        await(() ->
                waveform().isVisible() && find("capture.figures", Table.class).isVisible());
        assertFalse(figures.getVisible());
    }

    @Test
    void stopsListeningWhenDisposed() throws Exception {
        LoggedSweep sweep = openSweep();
        captures.dispose();
        desk.choose(Optional.of(sweep.entry()));
        pump();
        assertTrue(captures.isDisposed());
    }

    @Test
    void answersWhatIsAskedBeforeAllPartsAreThere() throws Exception {
        LoggedSweep sweep = LoggedSweep.in(folder);
        captures.dispose();
        captures = new CaptureComposite(shell, desk);
        captures.setFocus();
        captures.askForFile(sweep.captureFile(1));
        shell.layout();
        pump();
        await(() -> find("capture.file.full-scale", Text.class).isFocusControl());
        find("capture.file.full-scale", Text.class).setText("60 V"); // of which the file has 24 V peak
        press("capture.file.read");
        assertEquals(24 / Math.sqrt(2), Double.parseDouble(figure("Output, RMS", 2)), 2e-3);
    }

    @Test
    void mayBeDisposedWhileItsPartsAreMade() throws Exception {
        desk.choose(Optional.of(openSweep().entry()));
        captures.dispose();
        for (int turns = 0; turns < 20; turns++) {
            captures = new CaptureComposite(shell, desk);
            shell.layout();
            captures.setFocus();
            for (int turn = 0; turn < turns; turn++) {
                display.readAndDispatch();
            }
            captures.dispose();
            pump();
            assertEquals(0, shell.getChildren().length);
        }
    }
}
