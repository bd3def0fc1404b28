// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;

/**
 * In which form a sheet is wanted, where that is other than the project says.
 *
 * @param design how it is laid out; empty for as the project says
 * @param paper what it is printed on; empty for as the project says
 * @param language of its texts; empty for the one that is spoken now
 * @param comparedProjects folders of other projects to compare with; none for as the project says
 * @param comparedPeriods periods to compare; none for as the project says
 */
public record SheetWish(
        Optional<SheetDesign> design,
        Optional<PaperSize> paper,
        Optional<Locale> language,
        List<String> comparedProjects,
        List<String> comparedPeriods) {
    /** Everything as the project says. */
    public static final SheetWish NONE =
            new SheetWish(Optional.empty(), Optional.empty(), Optional.empty(), List.of(), List.of());

    /** Checks that nothing is missing and copies the lists. */
    public SheetWish {
        Objects.requireNonNull(design, "design");
        Objects.requireNonNull(paper, "paper");
        Objects.requireNonNull(language, "language");
        comparedProjects = List.copyOf(comparedProjects);
        comparedPeriods = List.copyOf(comparedPeriods);
    }
}
