// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.ohmstead.report.internal.AtomicFile;
import org.ohmstead.report.internal.Failures;
import org.ohmstead.report.internal.SheetTemplate;

/** The results sheet as one self-contained web page: style and charts lie within, nothing is fetched from anywhere. */
public final class HtmlSheet {
    private HtmlSheet() {}

    /** Returns the page: XHTML in UTF-8 with inline SVG charts, readable from a phone's width up to about 1100 pixels. */
    public static String render(ResultsSheet sheet) {
        return SheetTemplate.screen(sheet);
    }

    /**
     * Writes the page to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param sheet what to show
     * @param target the file; its folder must exist
     * @throws ReportException when the file cannot be written
     */
    public static void write(ResultsSheet sheet, Path target) throws ReportException {
        byte[] page = render(sheet).getBytes(StandardCharsets.UTF_8);
        AtomicFile.write(target, Failures.say("failure.sheet"), stream -> stream.write(page));
    }
}
