// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.io.IOException;
import java.nio.file.Path;
import org.ohmstead.report.internal.AtomicFile;
import org.ohmstead.report.internal.Failures;
import org.ohmstead.report.internal.PageRenderer;

/** The results sheet as PDF on pages of A4 or Letter, with embedded fonts, vector charts, bookmarks, and the log's head hash on every page. */
public final class PdfSheet {
    private PdfSheet() {}

    /**
     * Writes the sheet to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param sheet what to show
     * @param target the file; its folder must exist
     * @throws ReportException when the pages cannot be made or the file cannot be written
     */
    public static void write(ResultsSheet sheet, Path target) throws ReportException {
        byte[] pages = pages(sheet, target);
        AtomicFile.write(target, Failures.say("failure.sheet"), stream -> stream.write(pages));
    }

    private static byte[] pages(ResultsSheet sheet, Path target) throws ReportException {
        try {
            return PageRenderer.render(sheet);
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.pagesFor", target, e.getMessage()), e);
        }
    }
}
