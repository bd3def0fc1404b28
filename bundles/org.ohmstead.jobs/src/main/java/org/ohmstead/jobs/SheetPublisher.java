// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Locale;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.report.HtmlSheet;
import org.ohmstead.report.PdfSheet;
import org.ohmstead.report.ReportException;
import org.ohmstead.report.ResultsSheet;

/** Writes results sheets as files whose names tell the day and the state of the log. */
public final class SheetPublisher {
    private static final int HASH_DIGITS = 8;

    private SheetPublisher() {}

    /**
     * Writes a sheet as HTML and PDF. Files of the same day, log, design and language are replaced.
     *
     * @param sheet what to write
     * @param outputFolder where; it is made when it is missing
     * @throws ReportException when a file cannot be made or written
     * @throws IOException when the folder cannot be made
     */
    public static PublishedSheet publish(ResultsSheet sheet, Path outputFolder) throws ReportException, IOException {
        Files.createDirectories(outputFolder);
        String name = name(sheet);
        Path html = outputFolder.resolve(name + ".html");
        Path pdf = outputFolder.resolve(name + ".pdf");
        HtmlSheet.write(sheet, html);
        PdfSheet.write(sheet, pdf);
        return new PublishedSheet(sheet, html, pdf);
    }

    /**
     * Returns the name without ending that a sheet's files get, such as {@code sheet-2026-03-03-9f2c4e7a}; other designs than the full
     * report add theirs, and so do other languages than English, so that no sheet replaces one that is made otherwise.
     */
    public static String name(ResultsSheet sheet) {
        String hash = sheet.log().headHash();
        String day = sheet.producedAt().atZone(ZoneOffset.UTC).toLocalDate().toString();
        SheetDesign design = sheet.form().design();
        String language = sheet.form().language().getLanguage();
        return "sheet-" + day
                + (hash.isEmpty() ? "" : "-" + hash.substring(0, Math.min(HASH_DIGITS, hash.length())))
                + (design == SheetDesign.FULL ? "" : "-" + design.name().toLowerCase(Locale.ROOT))
                + (language.equals(Locale.ENGLISH.getLanguage()) ? "" : "-" + language);
    }
}
