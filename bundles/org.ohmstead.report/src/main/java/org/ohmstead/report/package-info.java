// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Publishes a test: the results sheet as a web page or as PDF, and the log as a table or as JSON. What is printed was measured and
 * judged elsewhere; here numbers are rounded, charts are laid out, and every text is escaped.
 *
 * <pre>{@code
 * ResultsSheet sheet = new ResultsSheet(
 *         project, readings, curves, ratings, new LogStamp(headHash, 40, true), "0.1.0", Instant.now(), problems);
 * HtmlSheet.write(sheet, Path.of("sheet.html"));
 * PdfSheet.write(sheet, Path.of("sheet.pdf"));
 * LogCsv.write(entries, Path.of("log.csv"));
 * try (SheetPages pages = SheetPages.of(sheet)) {
 *     PagePicture first = pages.picture(0, 2.0);
 * }
 * }</pre>
 */
package org.ohmstead.report;
