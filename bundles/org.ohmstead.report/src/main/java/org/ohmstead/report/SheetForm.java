// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.units.text.Language;

/**
 * In which form a sheet is made.
 *
 * @param design how it is laid out
 * @param paper what its pages are printed on
 * @param language of its texts, and the form of the numbers in them
 * @param logo of the laboratory, when there is one that can be shown
 * @param comparison what a comparison sets beside each other; other designs take no notice of it
 */
public record SheetForm(
        SheetDesign design,
        PaperSize paper,
        Locale language,
        Optional<SheetLogo> logo,
        Optional<SheetComparison> comparison) {
    /** Checks that nothing is missing. */
    public SheetForm {
        Objects.requireNonNull(design, "design");
        Objects.requireNonNull(paper, "paper");
        Objects.requireNonNull(language, "language");
        Objects.requireNonNull(logo, "logo");
        Objects.requireNonNull(comparison, "comparison");
    }

    /** Returns the form that a project wishes for, in the language that is spoken now, without logo and comparison. */
    public static SheetForm of(SheetLayout layout) {
        return new SheetForm(layout.design(), layout.paper(), Language.current(), Optional.empty(), Optional.empty());
    }

    /** Returns this in another design. */
    public SheetForm withDesign(SheetDesign newDesign) {
        return new SheetForm(newDesign, paper, language, logo, comparison);
    }

    /** Returns this on other paper. */
    public SheetForm withPaper(PaperSize newPaper) {
        return new SheetForm(design, newPaper, language, logo, comparison);
    }

    /** Returns this in another language. */
    public SheetForm withLanguage(Locale newLanguage) {
        return new SheetForm(design, paper, newLanguage, logo, comparison);
    }

    /** Returns this with another logo, or none. */
    public SheetForm withLogo(Optional<SheetLogo> newLogo) {
        return new SheetForm(design, paper, language, newLogo, comparison);
    }

    /** Returns this with something else to compare, or nothing. */
    public SheetForm withComparison(Optional<SheetComparison> newComparison) {
        return new SheetForm(design, paper, language, logo, newComparison);
    }
}
