// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.exchange.internal.Cell;
import org.ohmstead.exchange.internal.FormulaGuard;
import org.ohmstead.exchange.internal.ReadingColumns;
import org.ohmstead.exchange.internal.WholeFile;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * The log's readings as text in a {@link CsvDialect}: headings, then a row for each channel of each reading, the voided ones among
 * them. Notes, voids and figures have no rows of their own.
 *
 * <p>Headings name the unit: {@code power_W}, {@code supply_V}, {@code load_ohm}, {@code case_degC}; {@code thd_f_percent} is in
 * percent. {@code power_std_uncertainty_W} is the standard uncertainty, k = 1. {@code voided} is yes or no. What was not read is an
 * empty cell. Several notes of a reading stand in one cell, with a blank between them. When any reading names its specimen, the columns
 * {@code amplifier}, {@code serial_number} and {@code bench} follow.
 *
 * <p>A text that a spreadsheet would take for a formula gets an apostrophe in front; {@link ReadingImport} takes it away again. Numbers
 * stay numbers; only one of more than forty digits is written with an exponent.
 */
public final class ReadingsCsv {
    private static final Messages TEXTS = Messages.of(ReadingsCsv.class);
    private static final char BYTE_ORDER_MARK = '\uFEFF';
    private static final String LINE_END = "\r\n";
    /** A number of more digits is written with an exponent. */
    private static final int LONGEST_PLAIN = 40;

    private final CsvDialect dialect;
    private final ObjectWriter row;
    private final Appendable target;

    private ReadingsCsv(CsvDialect dialect, Appendable target) {
        this.dialect = dialect;
        this.target = target;
        CsvMapper mapper = new CsvMapper();
        // The usual check sees semicolons nearly everywhere, and would put numbers in quotation marks.
        mapper.configure(CsvGenerator.Feature.STRICT_CHECK_FOR_QUOTING, dialect == CsvDialect.SEMICOLON);
        this.row = mapper.writer(CsvSchema.emptySchema()
                .withoutHeader()
                .withColumnSeparator(dialect.separator())
                .withLineSeparator(LINE_END));
    }

    /**
     * Writes the table.
     *
     * @param entries of the log, in its order; asked for twice
     * @param dialect how
     * @param target takes the text; is not closed
     * @throws IOException when the target fails
     * @throws ExchangeException when the log cannot be read
     */
    public static void write(EntrySource entries, CsvDialect dialect, Appendable target)
            throws IOException, ExchangeException {
        boolean[] withSpecimen = new boolean[1];
        ReadingsCsv csv = new ReadingsCsv(dialect, target);
        try {
            entries.forEach(entry -> withSpecimen[0] |= entry.reading()
                    .flatMap(reading -> reading.provenance().specimen())
                    .isPresent());
            csv.begin(withSpecimen[0]);
            entries.forEach(entry -> ReadingColumns.rows(entry, withSpecimen[0]).forEach(csv::addOrStop));
        } catch (UncheckedIOException stopped) {
            throw stopped.getCause();
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("table.unwritten", failure.getMessage()), failure);
        }
    }

    /**
     * Writes the table to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param entries of the log, in its order
     * @param dialect how
     * @param target the file; its folder must exist
     * @throws ExchangeException when the file cannot be written or the log not be read
     */
    public static void write(EntrySource entries, CsvDialect dialect, Path target) throws ExchangeException {
        WholeFile.write(target, TEXTS.text("table.written"), stream -> {
            Writer writer = new OutputStreamWriter(stream, StandardCharsets.UTF_8);
            write(entries, dialect, writer);
            writer.flush();
        });
    }

    private void begin(boolean withSpecimen) throws IOException {
        if (!dialect.firstLine().isEmpty()) {
            target.append(BYTE_ORDER_MARK).append(dialect.firstLine()).append(LINE_END);
        }
        target.append(row.writeValueAsString(ReadingColumns.headings(withSpecimen)));
    }

    private void addOrStop(List<Cell> cells) {
        try {
            List<String> texts = new ArrayList<>(cells.size());
            for (Cell cell : cells) {
                texts.add(text(cell));
            }
            target.append(row.writeValueAsString(texts));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private String text(Cell cell) {
        if (cell instanceof Cell.Number number) {
            return digits(number.value()).replace('.', dialect.decimalMark());
        }
        if (cell instanceof Cell.Time time) {
            return time.moment().toString();
        }
        return FormulaGuard.guarded(((Cell.Text) cell).text());
    }

    /** Zeros without end are neither read by people nor taken in again. */
    private static String digits(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        String plain = exact.toPlainString();
        return plain.length() <= LONGEST_PLAIN ? plain : exact.toString();
    }
}
