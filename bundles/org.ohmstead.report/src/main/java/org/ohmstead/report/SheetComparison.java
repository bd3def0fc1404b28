// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.util.List;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.Subject;

/**
 * What a comparison sheet sets beside each other.
 *
 * @param subjects amplifiers or periods, 1 to {@link Comparison#MOST_SUBJECTS}, each with a name of its own; the others are held
 *     against the first
 */
public record SheetComparison(List<Subject> subjects) {
    /** Checks the number and the names, and copies the list. */
    public SheetComparison {
        subjects = List.copyOf(subjects);
        if (subjects.isEmpty() || subjects.size() > Comparison.MOST_SUBJECTS) {
            throw new IllegalArgumentException(
                    "subjects has " + subjects.size() + " entries; it must have 1 to " + Comparison.MOST_SUBJECTS);
        }
        if (subjects.stream().map(Subject::name).distinct().count() < subjects.size()) {
            throw new IllegalArgumentException("subjects has two of the same name; each must have a name of its own");
        }
    }
}
