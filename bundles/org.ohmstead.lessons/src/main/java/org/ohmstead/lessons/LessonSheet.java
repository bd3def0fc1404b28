// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import org.ohmstead.lessons.internal.SheetPage;
import org.ohmstead.model.PaperSize;

/** A lesson as a sheet to print: one HTML document that needs nothing else, on paper and on a phone. */
public final class LessonSheet {
    private LessonSheet() {}

    /** What the sheet is for. */
    public enum Kind {
        /** For learners: the question and room to write, no answers. */
        EXERCISE,
        /** For trainers: with the answer, all figures and plots, and the explanation. */
        SOLUTION
    }

    /**
     * Returns the sheet in the language of the lesson.
     *
     * @param lesson the lesson
     * @param values its controls, which the sheet states
     * @param kind exercise or solution
     * @param paper what it is printed on
     */
    public static String html(Lesson lesson, Controls values, Kind kind, PaperSize paper) {
        return SheetPage.html(
                Checks.present(lesson, "lesson"),
                Checks.present(values, "values"),
                Checks.present(kind, "kind"),
                Checks.present(paper, "paper"));
    }
}
