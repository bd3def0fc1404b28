// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.TableLimits;
import org.ohmstead.units.text.Messages;

/** What a workbook keeps apart from its sheets: which sheet is which part, and the texts that sheets share. */
final class XlsxParts {
    private static final Messages TEXTS = Messages.of(XlsxParts.class);
    private static final String BOOK = "xl/workbook.xml";
    private static final String BOOK_RELATIONS = "xl/_rels/workbook.xml.rels";
    private static final String WANTED = "readings";
    private static final int MOST_SHEETS = 1000;
    private static final int MOST_SHARED = 2_000_000;

    private final Map<String, String> relationBySheet = new LinkedHashMap<>();
    private final Map<String, String> targetByRelation = new HashMap<>();
    private final List<String> shared = new ArrayList<>();
    private Optional<String> sharedPart = Optional.empty();
    private int firstYear = 1900;

    private XlsxParts() {}

    static XlsxParts read(XlsxTable.Parts source, TableLimits limits)
            throws IOException, XMLStreamException, ExchangeException {
        XlsxParts parts = new XlsxParts();
        each(source, BOOK, parts::bookElement);
        each(source, BOOK_RELATIONS, parts::relation);
        if (parts.sharedPart.isPresent()) {
            parts.readShared(source, parts.sharedPart.get(), limits);
        }
        return parts;
    }

    private interface Element {
        void begins(XMLStreamReader xml) throws ExchangeException;
    }

    private static void each(XlsxTable.Parts source, String name, Element element)
            throws IOException, XMLStreamException, ExchangeException {
        try (InputStream in = source.open(name)) {
            XMLStreamReader xml = XlsxTable.reader(in);
            while (xml.hasNext()) {
                if (XlsxTable.advance(xml) == XMLStreamConstants.START_ELEMENT) {
                    element.begins(xml);
                }
            }
            xml.close();
        }
    }

    private void bookElement(XMLStreamReader xml) throws ExchangeException {
        if (xml.getLocalName().equals("sheet")) {
            String name = attribute(xml, "name");
            String relation = attribute(xml, "id");
            if (relationBySheet.size() >= MOST_SHEETS) {
                throw ExchangeException.refused(TEXTS.text("workbook.manySheets", MOST_SHEETS));
            }
            relationBySheet.putIfAbsent(name.toLowerCase(Locale.ROOT), relation);
        } else if (xml.getLocalName().equals("workbookPr")) {
            String flag = attribute(xml, "date1904");
            firstYear = flag.equals("1") || flag.equals("true") ? 1904 : 1900;
        }
    }

    private void relation(XMLStreamReader xml) {
        if (xml.getLocalName().equals("Relationship")
                && !attribute(xml, "TargetMode").equals("External")) {
            String target = attribute(xml, "Target");
            String part = target.startsWith("/") ? target.substring(1) : "xl/" + target;
            targetByRelation.put(attribute(xml, "Id"), part);
            if (attribute(xml, "Type").endsWith("/sharedStrings")) {
                sharedPart = Optional.of(part);
            }
        }
    }

    private static String attribute(XMLStreamReader xml, String localName) {
        for (int index = 0; index < xml.getAttributeCount(); index++) {
            if (xml.getAttributeLocalName(index).equals(localName)) {
                return xml.getAttributeValue(index);
            }
        }
        return "";
    }

    private void readShared(XlsxTable.Parts source, String name, TableLimits limits)
            throws IOException, XMLStreamException, ExchangeException {
        try (InputStream in = source.open(name)) {
            XMLStreamReader xml = XlsxTable.reader(in);
            StringBuilder text = new StringBuilder();
            long characters = 0;
            boolean inText = false;
            while (xml.hasNext()) {
                int event = XlsxTable.advance(xml);
                if (event == XMLStreamConstants.START_ELEMENT) {
                    inText = xml.getLocalName().equals("t");
                } else if (event == XMLStreamConstants.END_ELEMENT) {
                    inText = false;
                    if (xml.getLocalName().equals("si")) {
                        add(text.toString());
                        text.setLength(0);
                    }
                } else if (inText && xml.hasText()) {
                    text.append(xml.getText());
                    characters += xml.getTextLength();
                    requireFew(characters, text.length(), limits);
                }
            }
            xml.close();
        }
    }

    private void add(String text) throws ExchangeException {
        if (shared.size() >= MOST_SHARED) {
            throw ExchangeException.refused(TEXTS.text("workbook.manyTexts", MOST_SHARED));
        }
        shared.add(SheetText.unescaped(text));
    }

    private static void requireFew(long characters, int ofOne, TableLimits limits) throws ExchangeException {
        if (characters > limits.sharedCharacters() || ofOne > limits.cellCharacters()) {
            throw ExchangeException.refused(
                    TEXTS.text("workbook.muchText", limits.cellCharacters(), limits.sharedCharacters()));
        }
    }

    /** Returns the name of the wanted sheet's part. */
    String sheet() throws ExchangeException {
        String relation = relationBySheet.getOrDefault(
                WANTED, relationBySheet.values().stream().findFirst().orElse(""));
        String part = targetByRelation.get(relation);
        if (part == null) {
            throw ExchangeException.refused(TEXTS.text("workbook.noSheet"));
        }
        return part;
    }

    String shared(long index, long line) throws ExchangeException {
        if (index < 0 || index >= shared.size()) {
            throw ExchangeException.refused(TEXTS.text("workbook.noText", line));
        }
        return shared.get((int) index);
    }

    int firstYear() {
        return firstYear;
    }
}
