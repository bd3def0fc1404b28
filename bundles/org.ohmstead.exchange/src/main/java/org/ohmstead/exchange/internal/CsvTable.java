// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.TableLimits;
import org.ohmstead.units.text.Messages;

/** A table as text in one of the dialects. */
final class CsvTable implements RawTable {
    private static final Messages TEXTS = Messages.of(CsvTable.class);
    private static final char BYTE_ORDER_MARK = '\uFEFF';
    private static final int LONGEST_FIRST_LINE = 200;

    private final Reader reader;
    private final CsvParser parser;
    private final CsvDialect dialect;
    private final TableLimits limits;
    private final int linesBefore;

    private CsvTable(Reader reader, CsvParser parser, CsvDialect dialect, TableLimits limits, int linesBefore) {
        this.reader = reader;
        this.parser = parser;
        this.dialect = dialect;
        this.limits = limits;
        this.linesBefore = linesBefore;
    }

    /** Opens a file in the dialect that its first line names, else in the one given. */
    static CsvTable open(Path file, CsvDialect unnamed, TableLimits limits) throws IOException, ExchangeException {
        BufferedReader reader = new BufferedReader(new InputStreamReader(
                Files.newInputStream(file),
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT)));
        boolean open = false;
        try {
            Optional<CsvDialect> named = readFirstLine(reader);
            CsvDialect dialect = named.orElse(unnamed);
            CsvFactory factory = CsvFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxStringLength(limits.cellCharacters())
                            .build())
                    .build();
            CsvParser parser = factory.createParser(reader);
            parser.setSchema(CsvSchema.emptySchema().withoutHeader().withColumnSeparator(dialect.separator()));
            open = true;
            return new CsvTable(reader, parser, dialect, limits, named.isPresent() ? 1 : 0);
        } finally {
            if (!open) {
                reader.close();
            }
        }
    }

    /** Passes over a byte order mark and a line that names the dialect. */
    private static Optional<CsvDialect> readFirstLine(BufferedReader reader) throws IOException, ExchangeException {
        reader.mark(1);
        if (reader.read() != BYTE_ORDER_MARK) {
            reader.reset();
        }
        reader.mark(LONGEST_FIRST_LINE + 1);
        StringBuilder line = new StringBuilder();
        int next = reader.read();
        while (next >= 0 && next != '\n' && line.length() < LONGEST_FIRST_LINE) {
            line.append((char) next);
            next = reader.read();
        }
        String text = line.toString().strip().replaceAll("^\"|\"$", "");
        if (!text.startsWith("#")) {
            reader.reset();
            return Optional.empty();
        }
        Optional<CsvDialect> named = CsvDialect.namedBy(text);
        if (named.isEmpty()) {
            throw ExchangeException.refused(TEXTS.text("table.dialect", text, CsvDialect.SEMICOLON.firstLine()));
        }
        return named;
    }

    @Override
    public Optional<RawRow> next() throws IOException, ExchangeException {
        try {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token == JsonToken.START_ARRAY) {
                    RawRow row = row();
                    if (!row.blank()) {
                        return Optional.of(row);
                    }
                }
            }
            return Optional.empty();
        } catch (JsonProcessingException broken) {
            throw ExchangeException.refused(
                    TEXTS.text(
                            "table.line",
                            linesBefore + parser.currentLocation().getLineNr(),
                            plain(broken.getOriginalMessage())),
                    broken);
        }
    }

    private static String plain(String message) {
        String text = String.valueOf(message);
        return text.substring(0, Math.min(text.length(), 160)).replaceAll("[\\s.]+$", "");
    }

    private RawRow row() throws IOException, ExchangeException {
        List<RawRow.RawCell> cells = new ArrayList<>();
        long line = 0;
        for (JsonToken token = parser.nextToken();
                token != null && token != JsonToken.END_ARRAY;
                token = parser.nextToken()) {
            // Only a cell's own place is that of its line; the row's is still at the end of the row before.
            line = cells.isEmpty() ? linesBefore + parser.currentTokenLocation().getLineNr() : line;
            if (cells.size() == limits.columns()) {
                throw ExchangeException.refused(TEXTS.text("table.manyCells", line, limits.columns()));
            }
            String text = parser.getText();
            cells.add(new RawRow.RawCell(text == null ? "" : text, false));
        }
        return new RawRow(line, cells);
    }

    @Override
    public char decimalMark() {
        return dialect.decimalMark();
    }

    @Override
    public boolean guarded() {
        return true;
    }

    @Override
    public int firstYear() {
        return 1900;
    }

    @Override
    public void close() throws IOException {
        parser.close();
        reader.close();
    }
}
