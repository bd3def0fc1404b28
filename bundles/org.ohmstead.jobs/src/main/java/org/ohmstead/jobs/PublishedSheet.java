// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Path;
import java.util.Objects;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.report.ResultsSheet;

/**
 * A results sheet and where it was written.
 *
 * @param sheet what it says
 * @param html the file for a browser
 * @param pdf the file for printing
 */
public record PublishedSheet(ResultsSheet sheet, Path html, Path pdf) {
    /** Checks that nothing is missing. */
    public PublishedSheet {
        Objects.requireNonNull(sheet, "sheet");
        Objects.requireNonNull(html, "html");
        Objects.requireNonNull(pdf, "pdf");
    }

    /** Returns whether the measurement falls short of any rating. */
    public boolean anyFallsShort() {
        return sheet.ratings().stream()
                .flatMap(result -> result.outcome().stream())
                .anyMatch(outcome -> outcome.verdict() == Verdict.FALLS_SHORT);
    }
}
