// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.settle;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.ui.internal.ChartPane;
import org.ohmstead.units.text.Language;

/** Charts in German, and with the user's decimal sign. */
class ChartLanguageTest {
    @TempDir
    Path folder;

    private String before;
    private Shell shell;
    private ChartCanvas chart;

    @BeforeEach
    void open() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        shell.setSize(700, 480);
        shell.open();
        chart.show(PlotSource.of(
                Plot.of("Leistung", Axis.linear("Spannung", "V").withRange(0.5, 3), Axis.linear("Leistung", "W"))
                        .withSeries(Series.of("a", new double[] {1.25, 2}, new double[] {50, 60}, Style.MARKERS, 0))));
        settle(chart);
    }

    @AfterEach
    void close() {
        shell.dispose();
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    private String exported(String name) throws IOException {
        Path file = folder.resolve(name);
        chart.export(file);
        return Files.readString(file);
    }

    @Test
    void menuReadOutAndErrorsAreGerman() {
        ChartPane pane = (ChartPane) chart.getChildren()[0];
        List<String> items = Stream.of(pane.getMenu().getItems())
                .map(MenuItem::getText)
                .filter(text -> !text.isEmpty())
                .toList();
        assertEquals(List.of("&Alles zeigen\t0", "&Bild kopieren", "&Zahlen kopieren", "&Exportieren …"), items);
        chart.moveCursorTo(1.25);
        assertEquals(
                "Bei 1,250 V: a 50,00 W.",
                chart.readOut()
                        .orElseThrow()
                        .sentence()
                        .replaceAll("1,25\\d* V", "1,250 V")
                        .replaceAll("50,0+ W", "50,00 W"));
        IOException wrong = assertThrows(IOException.class, () -> chart.export(folder.resolve("chart.txt")));
        assertTrue(wrong.getMessage().contains("Der Dateiname chart.txt muss auf"), wrong.getMessage());
    }

    @Test
    void withoutAChoiceTheDecimalSignIsThatOfTheLanguage() throws IOException {
        String svg = exported("chart.svg");
        assertTrue(svg.contains(">1,5<") && !svg.contains(">1.5<"), svg);
        assertTrue(svg.contains("Leistung (W) über Spannung (V)"), svg);
        assertTrue(exported("chart.csv").contains("a,1.25,50.0,,"));
    }

    @Test
    void theUsersDecimalSignLeadsToAnotherPicture() throws IOException {
        int drawn = chart.picturesDrawn();
        chart.setReadOutStyle(new ReadOutStyle(true, "k = 2"));
        settle(chart);
        assertEquals(drawn, chart.picturesDrawn(), "with the same sign the picture is right as it is");
        chart.setReadOutStyle(new ReadOutStyle(false, "k = 2"));
        settle(chart);
        assertTrue(chart.picturesDrawn() > drawn);
        assertFalse(chart.picture().orElseThrow().request().decimalComma());
        String svg = exported("chart.svg");
        assertTrue(svg.contains(">1.5<") && !svg.contains(">1,5<"), svg);
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String place : List.of("{0}", "{1}", "{2}")) {
                assertEquals(
                        text.toString().contains(place),
                        german.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
        });
    }

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = ChartPane.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }
}
