// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.ohmstead.jobs.JobException;

/** What can be exported, told by how the file's name ends. */
enum ExportForm {
    HTML(true, "Results sheet as a &web page\u2026", "Web page (*.html)", ".html", ".htm"),
    PDF(true, "Results sheet as &PDF\u2026", "PDF (*.pdf)", ".pdf"),
    CSV(false, "Readings as a &table (CSV)\u2026", "Table (*.csv)", ".csv"),
    JSON(false, "Whole log as &JSON lines\u2026", "JSON lines (*.jsonl)", ".jsonl", ".json");

    private final boolean sheet;
    private final String menuText;
    private final String filterName;
    private final List<String> endings;

    ExportForm(boolean sheet, String menuText, String filterName, String... endings) {
        this.sheet = sheet;
        this.menuText = menuText;
        this.filterName = filterName;
        this.endings = List.of(endings);
    }

    /** Returns whether it is the results sheet, and not the log. */
    boolean isSheet() {
        return sheet;
    }

    String menuText() {
        return menuText;
    }

    String filterName() {
        return filterName;
    }

    /** Returns the ending that files get, with its dot. */
    String ending() {
        return endings.get(0);
    }

    /** Returns what a file shall hold. */
    static ExportForm of(Path file) throws JobException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        for (ExportForm form : values()) {
            if (form.endings.stream().anyMatch(name::endsWith)) {
                return form;
            }
        }
        throw new JobException("The name " + file.getFileName()
                + " does not say what to write. Let it end with .html or .pdf for the results sheet, .csv for the"
                + " readings as a table, or .jsonl for the whole log.");
    }
}
