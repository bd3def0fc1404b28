// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.ResourceBundle;
import java.util.TreeSet;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.SoundSeriesCsv;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;

class SoundCompositeTest {
    private static final double[] HERTZ = {31.5, 40, 50, 63, 80};
    private static final double[] BEFORE_DB = {98, 101.5, 104, 103, 100.5};
    private static final double[] AFTER_DB = {101.2, 104.4, 107.1, 105.8, 101};

    @TempDir
    private Path root;

    private final Queue<Path> answers = new ArrayDeque<>();
    private Stage stage;
    private Path sounds;

    @BeforeEach
    void setUp() throws Exception {
        Path folder = Files.createDirectories(root.resolve("lark.ohmstead"));
        stage = new Stage(folder);
        sounds = folder.resolve("sound");
    }

    @AfterEach
    void tearDown() {
        stage.close();
    }

    private void show() {
        SoundComposite composite =
                new SoundComposite(stage.shell, stage.desk, title -> Optional.ofNullable(answers.poll()));
        stage.shell.open();
        stage.settle();
        assertFalse(composite.isDisposed());
    }

    private static SoundSeries series(String meter, double[] levelsDb) {
        List<SoundPoint> points = new ArrayList<>();
        for (int i = 0; i < HERTZ.length; i++) {
            points.add(new SoundPoint(
                    HERTZ[i], OptionalDouble.of(-10), levelsDb[i], FrequencyWeighting.C, "driver's head"));
        }
        return new SoundSeries("", meter, 0.7, 0.3, points);
    }

    private void twoSeries() throws Exception {
        Files.createDirectories(sounds);
        SoundSeriesCsv.write(series("M-1", AFTER_DB), sounds.resolve("after.csv"));
        SoundSeriesCsv.write(series("M-1", BEFORE_DB), sounds.resolve("before.csv"));
        stage.open();
        show();
        stage.until("the first is shown", () -> table().getItemCount() == HERTZ.length);
    }

    private Table table() {
        return stage.find("sound.points.table", Table.class);
    }

    private String text(String id) {
        return stage.find(id, Label.class).getText();
    }

    private void type(String id, String value) {
        stage.find(id, Text.class).setText(value);
        stage.settle();
    }

    private void choose(String id, String item) {
        Combo combo = stage.find(id, Combo.class);
        combo.select(combo.indexOf(item));
        stage.select(combo);
    }

    @Test
    void saysWhatToDoWithoutAProject() {
        show();
        assertTrue(stage.find("sound.levels", ChartCanvas.class)
                .message()
                .orElseThrow()
                .contains("No project is open"));
        assertTrue(text("sound.caution").contains("harms hearing for good"));
        assertFalse(stage.find("sound.new", Button.class).isEnabled());
    }

    @Test
    void comparesTwoSeries() throws Exception {
        twoSeries();
        assertEquals("after", stage.find("sound.series", Combo.class).getText());
        // 107.1 dB(C) at 50 Hz are 107.1 + 1.30 - 30.27 = 78.1 dB(A); 105.8 at 63 Hz 105.8 + 0.82 - 26.22 = 80.4 (IEC
        // 61672-1).
        assertEquals("80.4", stage.find("sound.exposure.level", Text.class).getText());
        choose("sound.other", "before");
        stage.until("it is compared", () -> text("sound.facts").contains("compared"));
        // Mean of 3.2, 2.9, 3.1, 2.8 and 0.5 dB is 2.5; 2 sqrt(2) 0.3 = 0.85 dB, which the last does not reach.
        assertTrue(
                text("sound.facts").startsWith("5 points compared: +2.5 dB on average, 4 of them"),
                text("sound.facts"));
        assertTrue(text("sound.facts").contains("Both name the same meter"));
        assertTrue(stage.find("sound.changes", ChartCanvas.class).isVisible());
        choose("sound.other", "nothing");
        assertEquals("", text("sound.facts"));
    }

    @Test
    void keepsEveryChangeAndTakesItBack() throws Exception {
        twoSeries();
        stage.select(stage.find("sound.copy", Button.class));
        Path copy = sounds.resolve("after-2.csv");
        stage.until("the copy is written", () -> Files.exists(copy));
        assertEquals("after", stage.find("sound.other", Combo.class).getText());
        type("sound.repeat", "0.4");
        Text repeat = stage.find("sound.repeat", Text.class);
        repeat.notifyListeners(SWT.DefaultSelection, new Event());
        stage.until("it is written", () -> repeatDb(copy) == 0.4);
        stage.select(stage.find("sound.undo", Button.class));
        stage.until("it is taken back", () -> repeatDb(copy) == 0.3);
        assertEquals("0.3", repeat.getText());
        assertFalse(stage.find("sound.undo", Button.class).isEnabled());
        assertEquals(
                AFTER_DB[0],
                SoundSeriesCsv.read(sounds.resolve("after.csv")).points().get(0).levelDb());
    }

    private static double repeatDb(Path file) {
        try {
            return SoundSeriesCsv.read(file).repeatDb();
        } catch (ExchangeException failure) {
            throw new AssertionError(failure);
        }
    }

    @Test
    void beginsASeriesInAnEmptyProject() throws Exception {
        stage.open();
        show();
        stage.until("it has looked", () -> stage.find("sound.new", Button.class).isEnabled());
        assertTrue(stage.find("sound.levels", ChartCanvas.class)
                .message()
                .orElseThrow()
                .contains("Press Insert"));
        Control add = stage.find("sound.points.table", Table.class);
        Event insert = new Event();
        insert.keyCode = SWT.INSERT;
        insert.widget = add;
        add.notifyListeners(SWT.KeyDown, insert);
        stage.until("the row is written", () -> Files.exists(sounds.resolve("series.csv")));
        SoundPoint point =
                SoundSeriesCsv.read(sounds.resolve("series.csv")).points().get(0);
        assertEquals(20, point.frequencyHz());
        assertEquals(25, PointTable.next(List.of(point)).frequencyHz());
    }

    /** 94 dB at a tenth of full scale; half of full scale at 50 Hz is 13.98 dB more, C-weighted 1.29 dB less (IEC 61672-1). */
    @Test
    void measuresARecording() throws Exception {
        stage.open();
        show();
        answers.add(tone("tone.wav", 1000, 0.1));
        answers.add(tone("seat.wav", 50.118723, 0.5));
        stage.select(stage.find("sound.recording.calibration", Button.class));
        stage.select(stage.find("sound.recording.file", Button.class));
        type("sound.recording.position", "seat");
        stage.select(stage.find("sound.recording.measure", Button.class));
        stage.until("it is in the table", () -> table().getItemCount() == 1);
        stage.until("it is written", () -> Files.exists(sounds.resolve("series.csv")));
        SoundSeries series = SoundSeriesCsv.read(sounds.resolve("series.csv"));
        assertEquals(94 + 20 * Math.log10(5) - 1.2940, series.points().get(0).levelDb(), 0.01);
        assertEquals(0.4 / Math.sqrt(3), series.commonDb(), 1e-3);
        assertTrue(text("sound.recording.message").startsWith("Leq 106.7 dB (C)"), text("sound.recording.message"));
        answers.add(root.resolve("none.wav"));
        stage.select(stage.find("sound.recording.file", Button.class));
        stage.select(stage.find("sound.recording.measure", Button.class));
        stage.until("it failed", () -> text("sound.recording.message").contains("none.wav"));
    }

    private Path tone(String name, double hertz, double share) throws Exception {
        double[] samples = new double[3 * 48_000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = share * Math.sin(2 * Math.PI * hertz * i / 48_000);
        }
        Path file = root.resolve(name);
        WavFile.write(file, new Capture(List.of(Waveform.of(48_000, samples)), name, "made"), 24, new double[] {1});
        return file;
    }

    @Test
    void reckons() {
        show();
        // 10 lg 2; 88 + 10 lg 100.
        assertTrue(text("sound.change.result").contains("+3.01 dB"), text("sound.change.result"));
        assertTrue(text("sound.change.level").contains("108.0 dB"));
        type("sound.change.to", "0");
        assertTrue(text("sound.change.result").contains("each above 0 W"));
        // 10 lg (10^8.5 + 10^8.8 + 10^9).
        assertTrue(text("sound.sum.result").contains("92.89 dB"), text("sound.sum.result"));
        type("sound.sum.levels", "65");
        type("sound.sum.background", "60");
        assertTrue(text("sound.sum.result").contains("Without the background: 63.35 dB"));
        type("sound.sum.levels", "70 70");
        type("sound.sum.phase", "60");
        assertTrue(text("sound.sum.result").contains("74.77 dB"), text("sound.sum.result"));
        type("sound.sum.levels", "70 x");
        assertTrue(text("sound.sum.result").contains("\"x\" is no level"));
        // NIOSH 98-126, table 1-1: 100 dBA, 15 min; 29 CFR 1910.95, table G-16: 2 h.
        assertEquals("15 min", text("sound.exposure.niosh-1998"));
        assertEquals("2 h", text("sound.exposure.osha-1910-95"));
        type("sound.exposure.level", "116");
        assertEquals("at once", text("sound.exposure.osha-1910-95"));
        type("sound.exposure.level", "x");
        assertEquals("\u2013", text("sound.exposure.niosh-1998"));
    }

    @Test
    void saysThatAFileIsBroken() throws Exception {
        Files.createDirectories(sounds);
        Files.writeString(sounds.resolve("broken.csv"), "a,b\n");
        stage.open();
        show();
        stage.until("it is said", () -> text("sound.message").contains("no series of sound levels"));
    }

    @Test
    void speaksGermanThroughout() {
        String name = Texts.class.getPackageName() + ".messages";
        ResourceBundle german = ResourceBundle.getBundle(name, Locale.GERMAN);
        ResourceBundle english = ResourceBundle.getBundle(name, Locale.ROOT);
        assertEquals(new TreeSet<>(english.keySet()), new TreeSet<>(german.keySet()));
        assertEquals("Lautsprecher", german.getString("change.sensitivity"));
    }
}
