// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.report.internal.AtomicFile;
import org.ohmstead.report.internal.CsvColumns;
import org.ohmstead.report.internal.CsvRows;
import org.ohmstead.report.internal.Failures;
import org.ohmstead.testlog.LogEntry;

/**
 * The log's readings as a table of comma-separated values (RFC 4180, UTF-8, lines end with CR LF): a row of headings, then a row for
 * each channel of each reading, the voided ones among them. Notes and voids have no rows of their own.
 *
 * <p>Headings name the unit: {@code power_W}, {@code supply_V}, {@code load_ohm}, {@code case_degC}; {@code thd_f_percent} is in
 * percent. Times are UTC (ISO 8601). {@code voided} is yes or no, {@code void_reason} says why; {@code entry_hash} is that of the log's
 * entry. What was not read is an empty cell. {@code power_std_uncertainty_W} is the standard uncertainty, k = 1.
 *
 * <p>A text that begins with = + - @, a tab or a line break gets an apostrophe in front, so that no spreadsheet takes it for a formula.
 */
public final class LogCsv {
    private LogCsv() {}

    /** Returns the headings in their order. */
    public static List<String> headings() {
        return CsvColumns.HEADINGS;
    }

    /**
     * Writes the table.
     *
     * @param entries of the log, in its order
     * @param target takes the text; is not closed
     * @throws IOException when the target fails
     */
    public static void write(Iterable<LogEntry> entries, Appendable target) throws IOException {
        CsvRows rows = new CsvRows(target);
        rows.add(CsvColumns.HEADINGS);
        for (LogEntry entry : entries) {
            if (entry.reading().isPresent()) {
                Reading reading = entry.reading().get();
                for (ChannelReading channel : reading.channels()) {
                    rows.add(CsvColumns.cells(entry, reading, channel));
                }
            }
        }
    }

    /**
     * Writes the table to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param entries of the log, in its order
     * @param target the file; its folder must exist
     * @throws ReportException when the file cannot be written
     */
    public static void write(Iterable<LogEntry> entries, Path target) throws ReportException {
        AtomicFile.write(target, Failures.say("failure.logTable"), stream -> {
            Writer writer = new OutputStreamWriter(stream, StandardCharsets.UTF_8);
            write(entries, writer);
            writer.flush();
        });
    }
}
