// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.jobs.SheetWish;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.units.text.Language;

/**
 * In which form the sheet is shown, published and exported.
 *
 * @param design how it is laid out
 * @param paper what its pages are set for
 * @param language of its texts, and the form of its numbers
 */
record SheetChoice(SheetDesign design, PaperSize paper, Locale language) {
    SheetChoice {
        Objects.requireNonNull(design, "design");
        Objects.requireNonNull(paper, "paper");
        Objects.requireNonNull(language, "language");
    }

    /** Returns what a project says, in the language spoken now. */
    static SheetChoice of(SheetLayout layout) {
        return new SheetChoice(layout.design(), layout.paper(), Language.current());
    }

    /** Returns this after the project's own setting changed: what did not change in it stays as the user chose. */
    SheetChoice after(SheetLayout before, SheetLayout now) {
        return new SheetChoice(
                before.design() == now.design() ? design : now.design(),
                before.paper() == now.paper() ? paper : now.paper(),
                language);
    }

    SheetChoice withDesign(SheetDesign newDesign) {
        return new SheetChoice(newDesign, paper, language);
    }

    SheetChoice withPaper(PaperSize newPaper) {
        return new SheetChoice(design, newPaper, language);
    }

    SheetChoice withLanguage(Locale newLanguage) {
        return new SheetChoice(design, paper, newLanguage);
    }

    /** Returns whether the workbench itself speaks the language of the sheet. */
    boolean isSpoken() {
        return same(language, Language.current());
    }

    /** Returns the languages that can be chosen; the one spoken now with its country, which has a say in the form of numbers. */
    static List<Locale> languages() {
        Locale current = Language.current();
        return Language.SPOKEN.stream()
                .map(spoken -> same(spoken, current) ? current : spoken)
                .toList();
    }

    static boolean same(Locale one, Locale other) {
        return one.getLanguage().equals(other.getLanguage());
    }

    SheetWish wish() {
        return new SheetWish(Optional.of(design), Optional.of(paper), Optional.of(language), List.of(), List.of());
    }

    /** Returns what tells the name of an exported file apart from that of the full report in English. */
    String suffix() {
        return (design == SheetDesign.FULL ? "" : "-" + design.name().toLowerCase(Locale.ROOT))
                + (same(language, Locale.ENGLISH) ? "" : "-" + language.getLanguage());
    }
}
