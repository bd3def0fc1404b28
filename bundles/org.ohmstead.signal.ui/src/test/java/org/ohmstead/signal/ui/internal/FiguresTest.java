// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FiguresTest {
    /** Harmonics above half the sample rate fold back; at this tone they do not fall on others. */
    private static final double FOLDED_APART_HZ = 997;

    private static double[] known() {
        return Waves.of(
                48_000,
                1_000,
                phase -> 0.05 + 10 * Math.sin(phase) + 0.1 * Math.sin(2 * phase) + 0.01 * Math.sin(3 * phase));
    }

    private static double value(List<Figure> figures, String name) {
        return Double.parseDouble(figure(figures, name).values().get(0));
    }

    private static Figure figure(List<Figure> figures, String name) {
        return figures.stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void tellsTheClosedFormsOfAToneWithTwoHarmonics(@TempDir Path folder) {
        List<Figure> figures = Figures.of(Waves.load(folder, known()).channels(), Certainty.none());
        double square = (100 + 0.01 + 0.0001) / 2;
        double thdF = Math.sqrt(0.01 + 0.0001) / 10;
        assertEquals(1_000, value(figures, "Frequency"), 1e-3);
        assertEquals(Math.sqrt(square), value(figures, "Output, RMS"), 1e-4);
        assertEquals(square / 4, value(figures, "Power"), 0.005);
        assertEquals(50, value(figures, "Direct voltage"), 0.01);
        assertEquals(100 * thdF, value(figures, "THD_F"), 1e-3);
        assertEquals(100 * thdF / Math.sqrt(1 + thdF * thdF), value(figures, "THD_R"), 1e-3);
        assertEquals(-20 * Math.log10(thdF), value(figures, "SINAD"), 0.02);
        assertEquals("none", figure(figures, "Clipping").values().get(0));
    }

    /** White noise of s volts RMS has s sqrt(B / (fs / 2)) in a band of B hertz. */
    @Test
    void tellsTheNoiseApartFromTheHarmonics(@TempDir Path folder) {
        List<Figure> figures =
                Figures.of(Waves.load(folder, Waves.withNoise(known(), 0.02, 5)).channels(), Certainty.none());
        assertEquals(20 * Math.sqrt(19_980 / 24_000.0), value(figures, "Noise, RMS"), 0.4);
    }

    @Test
    void saysWhichSideIsClipped(@TempDir Path folder) {
        double[] both = Waves.of(9_600, FOLDED_APART_HZ, phase -> Math.max(-15, Math.min(15, 30 * Math.sin(phase))));
        double[] upper = Waves.of(9_600, FOLDED_APART_HZ, phase -> Math.min(20, 30 * Math.sin(phase)));
        List<Figure> figures = Figures.of(Waves.load(folder, both, upper).channels(), Certainty.none());
        assertEquals("both sides", figure(figures, "Clipping").values().get(0));
        assertEquals("upper side", figure(figures, "Clipping").values().get(1));
        // 20 log10(30 / 15), and 1 - 2 asin(1/2) / pi of the time.
        assertEquals(6.02, value(figures, "Drive over onset"), 0.05);
        assertEquals(66.7, value(figures, "Time clipped"), 0.5);
    }

    @Test
    void listsTheHarmonicsOfEachChannel(@TempDir Path folder) {
        double[] other = Waves.of(48_000, 1_000, phase -> 5 * Math.sin(phase) + 0.05 * Math.sin(3 * phase));
        List<HarmonicRow> rows =
                HarmonicRow.of(Waves.load(folder, known(), other).channels());
        assertEquals(20, rows.size());
        assertEquals(List.of("0.00", "0.00"), rows.get(0).levels());
        assertEquals("2000.00", rows.get(1).frequencyHz());
        assertEquals(-40, Double.parseDouble(rows.get(1).levels().get(0)), 0.01);
        assertEquals(1, Double.parseDouble(rows.get(1).percents().get(0)), 1e-3);
        assertEquals(-40, Double.parseDouble(rows.get(2).levels().get(1)), 0.01);
    }

    @Test
    void copiesAsATableThatASpreadsheetTakes(@TempDir Path folder) {
        LoadedCapture capture = Waves.load(folder, known());
        List<Figure> figures = Figures.of(capture.channels(), Certainty.none());
        String text = FiguresText.of(capture, figures, HarmonicRow.of(capture.channels()));
        assertTrue(text.contains("Frequency\tHz\t1000.000\n"), text);
        assertTrue(
                text.contains("Order\tFrequency (Hz)\tA (dB)\tA (%)\tA phase (deg)\n1\t1000.00\t0.00\t100.000\t\n"),
                text);
        assertTrue(text.lines().noneMatch(line -> line.contains("\u2212")));
    }

    @Test
    void tellsDefinitionAndBand(@TempDir Path folder) {
        List<Figure> figures = Figures.of(Waves.load(folder, known()).channels(), Certainty.none());
        assertTrue(figure(figures, "THD+N").explanation(0).contains("Band: 20 Hz to 20000 Hz."));
        assertFalse(figures.stream().anyMatch(figure -> figure.definition().isBlank()));
        assertTrue(Figures.of(Waves.bare(new double[100]).channels(), Certainty.none())
                .isEmpty());
    }
}
