// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.CaptureStore;

class PairTest {
    private static final double TOLERANCE = 1e-12;
    private static final double RATE = 48_000;

    @TempDir
    Path folder;

    @TempDir
    Path recorded;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.close();
    }

    private static PairSide side(long sequence, Reading reading) {
        return new PairSide(
                Samples.entry(sequence, reading), reading, PairWaves.channel(reading, "A"), Optional.empty(), "none");
    }

    private static Reading reading(double powerWatts) {
        return Samples.reading("s1", Mode.STEREO, 4, 13.8, powerWatts);
    }

    private static PairRow row(List<PairRow> rows, String label) {
        return rows.stream()
                .filter(each -> each.label().startsWith(label))
                .findFirst()
                .orElseThrow();
    }

    /** A recording of a sine in both channels as a table of times and volts, which lies in the project's store. */
    private Reading withCapture(Reading reading, double peakVolts) throws Exception {
        StringBuilder text = new StringBuilder("time (s),A (V),B (V)\n");
        for (int index = 0; index < 4800; index++) {
            double volts = peakVolts * Math.sin(2 * Math.PI * 1000 * index / RATE + 0.7);
            text.append(String.format(Locale.ROOT, "%.9f,%.6f,%.6f%n", index / RATE, volts, volts));
        }
        Path file = recorded.resolve("wave-" + (int) peakVolts + ".csv");
        Files.writeString(file, text, StandardCharsets.UTF_8);
        String hash = new CaptureStore(folder).store(file).sha256();
        Provenance before = reading.provenance();
        Provenance with = new Provenance(
                before.projectRevision(),
                before.procedureId(),
                before.procedureVersion(),
                before.softwareVersion(),
                before.operator(),
                before.instruments(),
                List.of(new CaptureUsed(hash, file.getFileName().toString(), List.of(1.0))));
        return new Reading(
                reading.stepId(),
                reading.mode(),
                reading.loadId(),
                reading.nominalLoadOhms(),
                reading.stimulus(),
                reading.endPoint(),
                reading.takenAt(),
                reading.conditions(),
                reading.channels(),
                with,
                reading.notes());
    }

    // Each reading has 0.4 W of the meter, shared, and 0.3 W of its own. With one meter the shared parts are equal and
    // cancel: u = sqrt(0.3^2 + 0.3^2). With two meters nothing does: u = sqrt(2) sqrt(0.4^2 + 0.3^2) (GUM 5.2.2).
    @Test
    void whatTheSameInstrumentsDoToBothCancelsInTheDifference() {
        Estimate same = PairDifference.of(side(1, reading(90)), side(2, reading(95)));
        assertEquals(5, same.value(), TOLERANCE);
        assertEquals(Math.sqrt(0.18), same.standardUncertainty(), TOLERANCE);
        Reading other = Samples.withMeter(reading(95), "another");
        Estimate different = PairDifference.of(side(1, reading(90)), side(2, other));
        assertEquals(Math.sqrt(0.5), different.standardUncertainty(), TOLERANCE);
    }

    @Test
    void aPowerIsMarkedWhenItDiffersByMoreThanTheUncertaintyOfTheDifference() {
        // 2 sqrt(0.18) W is 0.849 W.
        assertFalse(row(PairFacts.of(side(1, reading(90)), side(2, reading(90.8))), "Power")
                .marked());
        PairRow beyond = row(PairFacts.of(side(1, reading(90)), side(2, reading(90.9))), "Power");
        assertTrue(beyond.marked());
        assertEquals("+0.90\u00a0\u00b1\u00a00.85", beyond.difference());
        assertTrue(beyond.cells().get(3).startsWith("\u2260 "), "by a sign, not only by colour");
    }

    @Test
    void settingsAndInstrumentsAreMarkedWhereTheyDiffer() {
        Reading bridged = Samples.withMeter(Samples.reading("s2", Mode.BRIDGED, 4, 13.8, 90), "another");
        List<PairRow> rows = PairFacts.of(side(1, reading(90)), side(2, bridged));
        for (String label : List.of("Step", "Mode", "Output volts", "Channel")) {
            assertTrue(row(rows, label).marked(), label);
        }
        for (String label : List.of("Stimulus", "End point", "Operator", "Software")) {
            assertFalse(row(rows, label).marked(), label);
        }
        assertTrue(row(rows, "Power").hover().contains("not taken with the same instruments"));
    }

    @Test
    void saysWhatToDoUntilTwoAreChosen() throws Exception {
        new PairComposite(bench.shell, bench.desk);
        bench.shell.open();
        bench.settle();
        Label empty = bench.find("pair.empty", Label.class);
        assertTrue(empty.getText().startsWith("No project is open."), empty.getText());
        bench.withLog(Samples.six()).open();
        bench.settle();
        assertTrue(empty.getText().startsWith("Select two readings"), empty.getText());
        bench.find("pair.first", Text.class).setText("R0001");
        bench.find("pair.second", Text.class).setText("R0077");
        bench.find("pair.second", Text.class).notifyListeners(SWT.DefaultSelection, new Event());
        bench.settle();
        String told = bench.find("pair.message", Label.class).getText();
        assertTrue(told.startsWith("There is no entry R0077"), told);
    }

    @Test
    void twoRowsThatAreSelectedInTheLogAreComparedWithTheirWaves() throws Exception {
        List<Reading> readings = new ArrayList<>();
        readings.add(withCapture(reading(90), 26));
        readings.add(withCapture(reading(95), 27));
        bench.withLog(readings).open();
        bench.show();
        PairComposite pair = new PairComposite(bench.shell, bench.desk);
        bench.shell.layout();
        bench.settle();
        Table log = bench.find("log.table", Table.class);
        assertFalse(bench.find("log.compare", Button.class).isEnabled());
        log.setSelection(new int[] {0, 1});
        bench.select(log);
        assertTrue(bench.find("log.compare", Button.class).isEnabled());
        assertEquals("R0001", bench.find("pair.first", Text.class).getText());
        assertEquals("R0002", bench.find("pair.second", Text.class).getText());
        Table table = bench.find("pair.table", Table.class);
        assertEquals("R0002", table.getColumn(2).getText());
        assertTrue(table.getItemCount() > 30, table.getItemCount() + " lines");
        ChartCanvas wave = bench.find("pair.wave.2", ChartCanvas.class);
        assertEquals(Optional.empty(), wave.message());
        bench.until("the wave is there", () -> {
            wave.moveCursorTo(0.25);
            return wave.readOut().isPresent();
        });
        // A quarter of a cycle of 1 kHz after the rise through zero a sine has its peak.
        assertEquals(27, wave.readOut().orElseThrow().entries().get(0).y(), 0.1);
        bench.find("pair.overlay", Button.class).setSelection(true);
        bench.select(bench.find("pair.overlay", Button.class));
        assertFalse(wave.isVisible());
        assertFalse(pair.isDisposed());
        bench.select(bench.find("pair.swap", Button.class));
        assertEquals("R0001", table.getColumn(2).getText());
    }

    @Test
    void aMissingCaptureIsToldAndTheRestIsCompared() throws Exception {
        bench.withLog(Samples.six()).open();
        new PairComposite(bench.shell, bench.desk);
        bench.shell.open();
        bench.settle();
        PairChoice.of(bench.desk).choose("R0001", "R0002");
        bench.settle();
        String told = bench.find("pair.message", Label.class).getText();
        assertTrue(told.contains("R0001: The capture a.wav is missing"), told);
        assertTrue(bench.find("pair.table", Table.class).getItemCount() > 30);
    }
}
