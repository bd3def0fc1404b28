// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.exchange.internal.ReadingKey;
import org.ohmstead.exchange.internal.TableReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Readings from a table: text in a {@link CsvDialect}, or a workbook (.xlsx) whose sheet is called {@code readings} or is the first.
 * Columns are known by their headings, in any order; each heading of a quantity names its unit ({@code power_W}, {@code power (mW)},
 * {@code load [kohm]}, {@code case_K}, {@code thd_f_percent}), and values are converted. Needed are {@code taken_at_utc} or {@code
 * taken_at} with a zone in each cell, {@code mode}, {@code load_ohm} or {@code nominal_load_ohm}, {@code frequency}, {@code end_point}
 * with its limit, {@code power}, its uncertainty, {@code thd_f} and {@code supply} in volts; the other columns of {@link ReadingsCsv}
 * are taken where they are there, and {@code power_expanded_uncertainty} with {@code coverage_factor} (2 where it is not given) in
 * place of the standard uncertainty. Rows that follow one another with the same entry, or time, step, mode and load, are the channels
 * of one reading. Rows whose {@code voided} says yes are passed over. A text is taken as it stands, control characters and all, but for
 * white space around it.
 *
 * <p>Nothing is added before the whole table was read. What is added names the procedure {@value #PROCEDURE}, and its first note the
 * file, its SHA-256 and the lines.
 */
public final class ReadingImport {
    private static final Messages TEXTS = Messages.of(ReadingImport.class);
    /** What imported readings name as their procedure. */
    public static final String PROCEDURE = TableReading.PROCEDURE;

    private final TableReading table;

    private ReadingImport(TableReading table) {
        this.table = table;
    }

    /**
     * Reads a table without adding anything.
     *
     * @param file the table
     * @param settings what it does not say by itself
     * @throws ExchangeException when it is no table of readings at all, is damaged or too large; rows that are wrong are {@link #faults}
     */
    public static ReadingImport read(Path file, ImportSettings settings) throws ExchangeException {
        return new ReadingImport(TableReading.read(file, settings));
    }

    /** Returns readings that stood elsewhere than in a table. */
    static ReadingImport of(String fileName, String sha256, List<TableReading.Found> found) {
        return new ReadingImport(TableReading.of(fileName, sha256, found));
    }

    /** Returns the readings that can be added, in the order of the table. */
    public List<Reading> readings() {
        return table.found().stream().map(TableReading.Found::reading).toList();
    }

    /** Returns what is wrong with rows, at most the first 200. */
    public List<ImportFault> faults() {
        return table.faults();
    }

    /** Returns how much is wrong with rows in all. */
    public long faultCount() {
        return table.faultCount();
    }

    /** Returns how many readings cannot be added for that. */
    public int badReadings() {
        return table.badReadings();
    }

    /** Returns how many rows say that they were voided, and are passed over. */
    public int voidedRows() {
        return table.voidedRows();
    }

    /** Returns the headings of columns that stand for nothing known and are passed over. */
    public List<String> unusedHeadings() {
        return table.unused();
    }

    /** Returns the SHA-256 of the file, 64 hexadecimal digits. */
    public String sha256() {
        return table.sha256();
    }

    /**
     * What an import did.
     *
     * @param added ids of the entries that were added
     * @param alreadyThere readings that the log held already, with the same values
     * @param alreadyVoided how many of these were voided there, and stay so
     * @param leftOut readings that were left out because something is wrong with their rows
     */
    public record Report(List<String> added, int alreadyThere, int alreadyVoided, int leftOut) {
        /** Copies the list. */
        public Report {
            added = List.copyOf(added);
        }
    }

    /**
     * Adds the readings to a log, except those that it holds already: with the same values from an import, or as the very entry that
     * the row was exported from. Each is on the disk before the next is begun, so that an import that was broken off is simply repeated.
     *
     * @param log takes them
     * @param skipBad whether the good ones are added although something is wrong with others
     * @param progress hears how far it is
     * @throws ExchangeException when something is wrong with a row and {@code skipBad} is false, in which case nothing was added; or
     *     when the log fails, in which case the message says how many were added
     */
    public Report addTo(TestLog log, boolean skipBad, ExchangeProgress progress) throws ExchangeException {
        if (table.faultCount() > 0 && !skipBad) {
            throw ExchangeException.refused(TEXTS.text(
                    table.faultCount() > 1 ? "import.refused.more" : "import.refused",
                    table.fileName(),
                    table.badReadings(),
                    table.faults().get(0).text(),
                    table.faultCount() - 1));
        }
        List<String> added = new ArrayList<>();
        int already = 0;
        int voided = 0;
        try {
            Known known = Known.of(log);
            List<TableReading.Found> found = table.found();
            for (int index = 0; index < found.size(); index++) {
                progress.stopIfCancelled();
                progress.step(index, found.size(), TEXTS.text("import.step", index + 1));
                Optional<Boolean> there = known.voidedIfThere(found.get(index));
                if (there.isPresent()) {
                    already++;
                    voided += there.get() ? 1 : 0;
                } else {
                    added.add(log.append(found.get(index).reading()).id());
                    known.add(found.get(index));
                }
            }
            progress.step(found.size(), found.size(), "");
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(
                    TEXTS.text("import.broken", added.size(), table.fileName(), failure.getMessage()), failure);
        }
        return new Report(added, already, voided, table.badReadings());
    }

    /** What a log holds already. */
    private static final class Known {
        private final Set<String> hashes = new HashSet<>();
        private final Map<String, Boolean> voidedByKey = new HashMap<>();

        static Known of(TestLog log) throws TestLogException {
            Known known = new Known();
            LogQuery readings = new LogQuery(
                    Set.of(EntryKind.READING),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    true);
            log.forEach(readings, entry -> {
                known.hashes.add(entry.hash());
                entry.reading()
                        .filter(reading -> reading.provenance().procedureId().equals(PROCEDURE))
                        .ifPresent(reading ->
                                known.voidedByKey.merge(ReadingKey.of(reading), entry.voided(), Boolean::logicalAnd));
            });
            return known;
        }

        Optional<Boolean> voidedIfThere(TableReading.Found found) {
            if (hashes.contains(found.entryHash())) {
                return Optional.of(false);
            }
            return Optional.ofNullable(voidedByKey.get(ReadingKey.of(found.reading())));
        }

        void add(TableReading.Found found) {
            voidedByKey.put(ReadingKey.of(found.reading()), false);
        }
    }
}
