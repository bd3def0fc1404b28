// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import org.dhatim.fastexcel.Workbook;
import org.ohmstead.exchange.internal.Cell;
import org.ohmstead.exchange.internal.OtherColumns;
import org.ohmstead.exchange.internal.ReadingColumns;
import org.ohmstead.exchange.internal.SheetRows;
import org.ohmstead.exchange.internal.WholeFile;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * The log as a workbook (Office Open XML, ISO/IEC 29500): a sheet {@code readings} with a row for each channel of each reading, a sheet
 * {@code sweep levels} with each level, a sheet {@code figures} with what measurements found, and a sheet {@code about}. Headings name
 * the unit and stay in sight; numbers are numbers, times are times in UTC, and texts are texts, so that none is ever taken for a
 * formula. A sheet that would have more rows than a spreadsheet can hold goes on in {@code readings 2} and so on. A text of more than
 * 32,767 characters, which is the most that a cell can hold, is cut there and ends with an ellipsis. Control characters are written by
 * their numbers ({@code _x0001_}), as spreadsheets read them.
 */
public final class LogWorkbook {
    private static final Messages TEXTS = Messages.of(LogWorkbook.class);

    private LogWorkbook() {}

    /**
     * What the sheet {@code about} says.
     *
     * @param title title of the project
     * @param softwareVersion version of the software that writes it, such as 0.1.0
     * @param writtenAt when
     * @param headHash hash of the log's last entry; may be empty
     */
    public record About(String title, String softwareVersion, Instant writtenAt, String headHash) {}

    /**
     * Writes the workbook to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param entries of the log, in its order; asked for several times, and never all held in memory
     * @param about what the last sheet says
     * @param target the file; its folder must exist
     * @throws ExchangeException when the file cannot be written or the log not be read
     */
    public static void write(EntrySource entries, About about, Path target) throws ExchangeException {
        WholeFile.write(target, TEXTS.text("workbook.written"), stream -> write(entries, about, stream));
    }

    /**
     * Writes the workbook.
     *
     * @param entries of the log, in its order; asked for several times, and never all held in memory
     * @param about what the last sheet says
     * @param target takes it; is not closed
     * @throws IOException when the target fails
     * @throws ExchangeException when the log cannot be read
     */
    public static void write(EntrySource entries, About about, OutputStream target)
            throws IOException, ExchangeException {
        try (Workbook book = new Workbook(target, "Ohmstead", applicationVersion(about.softwareVersion()))) {
            sheet(book, "readings", ReadingColumns.headings(true), entries, entry -> ReadingColumns.rows(entry, true));
            sheet(book, "sweep levels", OtherColumns.LEVEL_HEADINGS, entries, OtherColumns::levels);
            sheet(book, "figures", OtherColumns.FIGURE_HEADINGS, entries, OtherColumns::figures);
            try (SheetRows rows = new SheetRows(book, "about", List.of("what", "value"))) {
                about(rows, about);
            }
        } catch (UncheckedIOException stopped) {
            throw stopped.getCause();
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("workbook.unwritten", failure.getMessage()), failure);
        }
    }

    /** The property of a workbook holds two numbers at most. */
    private static String applicationVersion(String softwareVersion) {
        return softwareVersion.matches("\\d{1,2}\\.\\d{1,4}.*")
                ? softwareVersion.replaceAll("^(\\d{1,2}\\.\\d{1,4}).*$", "$1")
                : "0.0";
    }

    private static void sheet(
            Workbook book,
            String name,
            List<String> headings,
            EntrySource entries,
            Function<LogEntry, List<List<Cell>>> rowsOf)
            throws IOException, TestLogException {
        try (SheetRows rows = new SheetRows(book, name, headings)) {
            entries.forEach(entry -> rowsOf.apply(entry).forEach(rows::addOrStop));
        }
    }

    private static void about(SheetRows rows, About about) {
        rows.addOrStop(List.of(Cell.of("project"), Cell.of(about.title())));
        rows.addOrStop(List.of(Cell.of("written at (UTC)"), new Cell.Time(about.writtenAt())));
        rows.addOrStop(List.of(Cell.of("software version"), Cell.of(about.softwareVersion())));
        rows.addOrStop(List.of(Cell.of("head hash of the log"), Cell.of(about.headHash())));
        rows.addOrStop(List.of(
                Cell.of("units"),
                Cell.of("Each heading names its unit: W, V, A, ohm, Hz, s, dB, degC; Vrms is effective volts; percent"
                        + " is percent. An empty cell was not read.")));
        rows.addOrStop(List.of(
                Cell.of("uncertainty"),
                Cell.of("power_std_uncertainty_W is the standard uncertainty (k = 1) of the power.")));
        rows.addOrStop(List.of(Cell.of("times"), Cell.of("All times are UTC.")));
    }
}
