// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.PushbackReader;
import java.io.Reader;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.TableLimits;
import org.ohmstead.units.text.Messages;

/**
 * A sheet of a workbook (Office Open XML, ISO/IEC 29500-1, 18.2 to 18.4), read row by row: the one called "readings", else the first.
 * Formulas count with the value that was stored with them.
 */
final class XlsxTable implements RawTable {
    private static final Messages TEXTS = Messages.of(XlsxTable.class);
    private static final int MOST_PARTS = 2000;
    private static final long FREE_BYTES = 4L << 20;
    private static final int LONGEST_RUN = 1 << 20;
    private static final int MOST_SHEET_COLUMNS = 16_384;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final ZipFile zip;
    private final TableLimits limits;
    private final XlsxParts parts;
    private final InputStream sheetStream;
    private final XMLStreamReader sheet;
    private long line;

    private XlsxTable(ZipFile zip, TableLimits limits, XlsxParts parts, InputStream stream, XMLStreamReader sheet) {
        this.zip = zip;
        this.limits = limits;
        this.parts = parts;
        this.sheetStream = stream;
        this.sheet = sheet;
    }

    static XlsxTable open(Path file, TableLimits limits) throws IOException, ExchangeException {
        boolean open = false;
        ZipFile zip = new ZipFile(file.toFile());
        try {
            if (zip.size() > MOST_PARTS) {
                throw ExchangeException.refused(TEXTS.text("workbook.manyParts", file.getFileName(), MOST_PARTS));
            }
            InflationGuard guard = new InflationGuard(
                    file.getFileName().toString(),
                    Files.size(file),
                    limits.inflatedBytes(),
                    limits.inflationRatio(),
                    FREE_BYTES);
            Parts source = name -> part(zip, guard, name);
            XlsxParts parts = XlsxParts.read(source, limits);
            InputStream stream = source.open(parts.sheet());
            XlsxTable table = new XlsxTable(zip, limits, parts, stream, reader(stream));
            open = true;
            return table;
        } catch (XMLStreamException broken) {
            throw broken(broken);
        } finally {
            if (!open) {
                zip.close();
            }
        }
    }

    /** Opens the parts of a workbook. */
    @FunctionalInterface
    interface Parts {
        /** Opens a part by its name. */
        InputStream open(String name) throws IOException, ExchangeException;
    }

    private static InputStream part(ZipFile zip, InflationGuard guard, String name)
            throws IOException, ExchangeException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            throw ExchangeException.refused(TEXTS.text("workbook.noPart", name));
        }
        return new RunLimit(guard.guarded(zip.getInputStream(entry)), LONGEST_RUN);
    }

    static XMLStreamReader reader(InputStream in) throws XMLStreamException, IOException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("a reference to something outside");
        });
        return factory.createXMLStreamReader(text(in));
    }

    /**
     * Returns the text of a part, which is in UTF-8 or UTF-16 (ISO/IEC 29500-2, 6.2.5). The parser's own decoding prints what it finds
     * wrong.
     */
    private static Reader text(InputStream in) throws IOException {
        PushbackInputStream bytes = new PushbackInputStream(in, 2);
        byte[] mark = bytes.readNBytes(2);
        bytes.unread(mark);
        boolean wide = mark.length == 2 && ((mark[0] & 0xFF) == 0xFE || (mark[0] & 0xFF) == 0xFF);
        Reader text = new InputStreamReader(
                bytes,
                (wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8)
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
        if (wide) {
            return text;
        }
        PushbackReader begun = new PushbackReader(text, 1);
        int first = begun.read();
        if (first >= 0 && first != BYTE_ORDER_MARK) {
            begun.unread(first);
        }
        return begun;
    }

    static ExchangeException broken(XMLStreamException failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof InflationGuard.TooMuch tooMuch) {
                return tooMuch.refusal();
            }
            if (cause instanceof XMLStreamException xml
                    && xml.getNestedException() instanceof InflationGuard.TooMuch tooMuch) {
                return tooMuch.refusal();
            }
        }
        return ExchangeException.refused(TEXTS.text("workbook.noXml"), failure);
    }

    /** Moves on; refuses what a workbook never holds. */
    static int advance(XMLStreamReader xml) throws XMLStreamException, ExchangeException {
        int event = next(xml);
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
            throw ExchangeException.refused(TEXTS.text("workbook.entity"));
        }
        return event;
    }

    private static int next(XMLStreamReader xml) throws XMLStreamException {
        try {
            return xml.next();
        } catch (MissingResourceException unsaid) {
            // The parser lacks words for some of what it finds wrong in a document type, and fails over that instead.
            throw new XMLStreamException(unsaid);
        }
    }

    @Override
    public Optional<RawRow> next() throws IOException, ExchangeException {
        try {
            while (sheet.hasNext()) {
                if (advance(sheet) == XMLStreamConstants.START_ELEMENT
                        && sheet.getLocalName().equals("row")) {
                    RawRow row = row();
                    if (!row.blank()) {
                        return Optional.of(row);
                    }
                }
            }
            return Optional.empty();
        } catch (XMLStreamException broken) {
            throw broken(broken);
        }
    }

    private RawRow row() throws XMLStreamException, ExchangeException {
        line = number(sheet.getAttributeValue(null, "r"), line + 1);
        List<RawRow.RawCell> cells = new ArrayList<>();
        int column = -1;
        while (true) {
            int event = advance(sheet);
            if (event == XMLStreamConstants.END_ELEMENT && sheet.getLocalName().equals("row")) {
                return new RawRow(line, cells);
            }
            if (event == XMLStreamConstants.START_ELEMENT
                    && sheet.getLocalName().equals("c")) {
                column = column(sheet.getAttributeValue(null, "r"), column + 1);
                put(cells, column, cell());
            }
        }
    }

    private void put(List<RawRow.RawCell> cells, int column, RawRow.RawCell cell) throws ExchangeException {
        if (cell.text().isEmpty()) {
            return;
        }
        if (column >= limits.columns()) {
            throw ExchangeException.refused(TEXTS.text("workbook.manyCells", line, limits.columns()));
        }
        while (cells.size() <= column) {
            cells.add(RawRow.RawCell.BLANK);
        }
        cells.set(column, cell);
    }

    private RawRow.RawCell cell() throws XMLStreamException, ExchangeException {
        String type = String.valueOf(sheet.getAttributeValue(null, "t"));
        StringBuilder text = new StringBuilder();
        int reading = 0;
        while (true) {
            int event = advance(sheet);
            if (event == XMLStreamConstants.END_ELEMENT && sheet.getLocalName().equals("c")) {
                return cell(type, text.toString());
            }
            if (event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT) {
                boolean value =
                        sheet.getLocalName().equals("v") || sheet.getLocalName().equals("t");
                reading = value && event == XMLStreamConstants.START_ELEMENT ? 1 : 0;
            } else if (reading > 0 && sheet.hasText()) {
                append(text, sheet.getText());
            }
        }
    }

    private void append(StringBuilder text, String more) throws ExchangeException {
        if (text.length() + more.length() > limits.cellCharacters()) {
            throw ExchangeException.refused(TEXTS.text("workbook.longCell", line, limits.cellCharacters()));
        }
        text.append(more);
    }

    private RawRow.RawCell cell(String type, String text) throws ExchangeException {
        return switch (type) {
            case "s" -> new RawRow.RawCell(parts.shared(number(text, -1), line), false);
            case "inlineStr", "str", "d" -> new RawRow.RawCell(SheetText.unescaped(text), false);
            case "b" -> new RawRow.RawCell(text.equals("1") ? "yes" : "no", false);
            case "e" -> new RawRow.RawCell(text, false);
            default -> new RawRow.RawCell(text, true);
        };
    }

    private static long number(String text, long missing) throws ExchangeException {
        if (text == null) {
            return missing;
        }
        if (!text.matches("[0-9]{1,9}")) {
            throw ExchangeException.refused(TEXTS.text("workbook.noPlace"));
        }
        return Long.parseLong(text);
    }

    private static int column(String reference, int missing) throws ExchangeException {
        if (reference == null) {
            return missing;
        }
        int column = 0;
        int index = 0;
        while (index < Math.min(4, reference.length()) && Character.isUpperCase(reference.charAt(index))) {
            column = column * 26 + reference.charAt(index) - 'A' + 1;
            index++;
        }
        if (column < 1 || column > MOST_SHEET_COLUMNS) {
            throw ExchangeException.refused(TEXTS.text("workbook.noColumn"));
        }
        return column - 1;
    }

    @Override
    public char decimalMark() {
        return '.';
    }

    @Override
    public boolean guarded() {
        return false;
    }

    @Override
    public int firstYear() {
        return parts.firstYear();
    }

    @Override
    public void close() throws IOException {
        try (zip;
                sheetStream) {
            sheet.close();
        } catch (XMLStreamException failure) {
            throw new IOException(TEXTS.text("workbook.notClosed"), failure);
        }
    }
}
