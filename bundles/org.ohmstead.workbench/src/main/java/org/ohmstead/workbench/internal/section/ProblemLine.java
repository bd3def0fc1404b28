// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;

/**
 * A problem as a line of the problems view.
 *
 * @param problem what it is
 * @param place where it is, in plain words
 * @param index its place among the problems as they were found
 */
record ProblemLine(Problem problem, String place, int index) {
    /** The columns, in their order. */
    enum Column {
        SEVERITY(0, 15, Comparator.comparing(line -> line.problem().severity())),
        WHAT(40, 40, Comparator.comparing(line -> line.problem().what(), String.CASE_INSENSITIVE_ORDER)),
        PLACE(20, 24, Comparator.comparing(ProblemLine::place, String.CASE_INSENSITIVE_ORDER)),
        REMEDY(32, 30, Comparator.comparing(line -> line.problem().remedy(), String.CASE_INSENSITIVE_ORDER));

        private final int weight;
        private final int leastChars;
        private final Comparator<ProblemLine> order;

        Column(int weight, int leastChars, Comparator<ProblemLine> order) {

            this.weight = weight;
            this.leastChars = leastChars;
            this.order = order;
        }

        String title() {
            return Texts.text("problems.column." + name());
        }

        /** Returns its share of the width that is left. */
        int weight() {
            return weight;
        }

        /** Returns the characters for which it always has room. */
        int leastChars() {
            return leastChars;
        }

        /** Returns the order of lines by this column; lines that are equal in it stay as they were found. */
        Comparator<ProblemLine> order(boolean descending) {
            return (descending ? order.reversed() : order).thenComparing(ProblemLine::index);
        }
    }

    String text(Column column) {
        return switch (column) {
            case SEVERITY -> Words.of(problem.severity());
            case WHAT -> problem.what();
            case PLACE -> place;
            case REMEDY -> problem.remedy();
        };
    }

    /** Returns whether the line has the severity, when one is asked for, and holds every word of the text. */
    boolean matches(Optional<Severity> severity, String text) {
        String all = (problem.what() + " " + place + " " + problem.remedy()).toLowerCase(Locale.ROOT);
        boolean wanted = severity.map(only -> only == problem.severity()).orElse(true);
        return wanted
                && List.of(text.toLowerCase(Locale.ROOT).strip().split("\\s+")).stream()
                        .allMatch(all::contains);
    }

    /** Returns lines as tab-separated values under their titles. */
    static String asTsv(List<ProblemLine> lines) {
        List<Column> columns = List.of(Column.values());
        String head = columns.stream().map(Column::title).collect(Collectors.joining("\t"));
        return head + "\n"
                + lines.stream()
                        .map(line -> columns.stream()
                                .map(column -> line.text(column).replaceAll("[\\t\\r\\n]+", " "))
                                .collect(Collectors.joining("\t")))
                        .collect(Collectors.joining("\n"))
                + "\n";
    }

    /** Returns "2 errors, 3 warnings"; "No problems found." when there are none. */
    static String counted(List<Problem> problems) {
        if (problems.isEmpty()) {
            return Texts.text("problems.none");
        }
        return List.of(Severity.values()).stream()
                .map(severity -> counted(problems, severity))
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private static String counted(List<Problem> problems, Severity severity) {
        long count = problems.stream()
                .filter(problem -> problem.severity() == severity)
                .count();
        return count == 0 ? "" : Texts.counted("problems.count." + severity, (int) count);
    }
}
