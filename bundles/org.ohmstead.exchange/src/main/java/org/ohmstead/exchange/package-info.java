// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * What goes out of a project and comes into one: readings as text tables and workbooks, the log with its chain as JSON Lines, the whole
 * project as one file, archives, and the check of the captures. Nothing that comes in is trusted: sizes are counted while unfolding,
 * names and hashes are checked, and nothing is put in place or added before all of it was found good.
 *
 * <pre>{@code
 * ReadingsCsv.write(EntrySource.of(log, LogQuery.everything()), CsvDialect.COMMA, Path.of("readings.csv"));
 * ReadingImport table = ReadingImport.read(Path.of("earlier.xlsx"), ImportSettings.of(revision, "0.1.0"));
 * ReadingImport.Report report = table.addTo(log, false, ExchangeProgress.SILENT);
 * ProjectPack.pack(projectFolder, Path.of("kestrel.zip"), "0.1.0", ExchangeProgress.SILENT);
 * }</pre>
 */
package org.ohmstead.exchange;
