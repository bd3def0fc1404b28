// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.ohmstead.jobs.JobException;

/** What can be exported, told by how the file's name ends. */
enum ExportForm {
    HTML(true, ".html", ".htm"),
    PDF(true, ".pdf"),
    CSV(false, ".csv"),
    JSON(false, ".jsonl", ".json");

    private final boolean sheet;
    private final List<String> endings;

    ExportForm(boolean sheet, String... endings) {
        this.sheet = sheet;
        this.endings = List.of(endings);
    }

    /** Returns whether it is the results sheet, and not the log. */
    boolean isSheet() {
        return sheet;
    }

    String menuText() {
        return Texts.say("export." + name());
    }

    String filterName() {
        return Texts.say("export." + name() + ".filter");
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
        throw new JobException(Texts.say("export.unknown", file.getFileName()));
    }
}
