// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.plot.ui.UiThread.settle;
import static org.ohmstead.plot.ui.UiThread.until;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.ImageTransfer;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.ui.internal.ChartPane;
import org.w3c.dom.Document;

class ChartExportTest {
    @TempDir
    Path folder;

    private Shell shell;
    private ChartCanvas chart;
    private ChartPane pane;

    @BeforeEach
    void open() {
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
        chart = new ChartCanvas(shell, SWT.NONE);
        pane = (ChartPane) chart.getChildren()[0];
        shell.setSize(700, 480);
        shell.open();
        chart.show(PlotSource.of(ChartCanvasTest.power()));
        chart.setSeriesVisible("fit", false);
        settle(chart);
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    @Test
    void svgIsXmlWithTextsAndWithoutHiddenSeries() throws Exception {
        Path file = folder.resolve("power.svg");
        chart.export(file);
        Document document = DocumentBuilderFactory.newDefaultNSInstance()
                .newDocumentBuilder()
                .parse(file.toFile());
        assertEquals("svg", document.getDocumentElement().getLocalName());
        String text = document.getDocumentElement().getTextContent();
        assertTrue(text.contains("Supply (V)") && text.contains("measured"), text);
        assertFalse(text.contains("fit"), text);
    }

    @Test
    void pngHasTwoPixelsForEachPoint() throws IOException {
        Path file = folder.resolve("power.PNG");
        chart.export(file);
        ImageData picture = new ImageLoader().load(file.toString())[0];
        assertEquals(2 * Math.round(pane.getClientArea().width / pane.pixelsOfPoint()), picture.width);
        assertEquals(2 * Math.round(pane.getClientArea().height / pane.pixelsOfPoint()), picture.height);
        assertEquals(0xFFFFFF, rgb(picture, 1, 1));
    }

    private static int rgb(ImageData picture, int x, int y) {
        RGB colour = picture.palette.getRGB(picture.getPixel(x, y));
        return colour.red << 16 | colour.green << 8 | colour.blue;
    }

    @Test
    void pdfCarriesItsTitleAndEmbeddedFonts() throws IOException {
        Path file = folder.resolve("power.pdf");
        chart.export(file);
        String raw = Files.readString(file, StandardCharsets.ISO_8859_1);
        assertTrue(raw.startsWith("%PDF-1."), raw.substring(0, 8));
        assertTrue(raw.contains("/Title (Power)"));
        assertTrue(raw.contains("OpenSans"));
    }

    @Test
    void csvHasTheRowsInViewOfWhatIsShown() throws IOException {
        Path file = folder.resolve("power.csv");
        chart.export(file);
        List<String> lines = Files.readAllLines(file);
        assertEquals("series,Supply (V),Power (W),lower,upper", lines.get(0));
        assertEquals("measured,11.0,45.0,44.0,46.0", lines.get(1));
        // Five points, five places of the band and the heading; the line is hidden.
        assertEquals(11, lines.size());
    }

    @Test
    void unknownEndingIsRefusedInPlainWords() {
        IOException refused = assertThrows(IOException.class, () -> chart.export(folder.resolve("power.doc")));
        assertTrue(refused.getMessage().contains("power.doc"), refused.getMessage());
        assertTrue(refused.getMessage().contains(".svg"), refused.getMessage());
        chart.showMessage("Nothing yet.");
        assertThrows(IOException.class, () -> chart.export(folder.resolve("power.svg")));
    }

    @Test
    void pictureAndDataGoToTheClipboard() {
        Clipboard clipboard = new Clipboard(Display.getDefault());
        try {
            chart.copyData();
            until("the notice", () -> pane.notice().orElse("").contains("numbers"));
            String table = (String) clipboard.getContents(TextTransfer.getInstance());
            assertTrue(table.startsWith("series\tSupply (V)\tPower (W)\tlower\tupper"), table);
            chart.copyPicture();
            until("the notice", () -> pane.notice().orElse("").contains("picture"));
            ImageData picture = (ImageData) clipboard.getContents(ImageTransfer.getInstance());
            assertNotNull(picture);
            assertEquals(2 * Math.round(pane.getClientArea().width / pane.pixelsOfPoint()), picture.width);
        } finally {
            clipboard.dispose();
        }
    }
}
