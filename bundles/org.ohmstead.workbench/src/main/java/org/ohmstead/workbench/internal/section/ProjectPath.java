// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.workbench.session.ProblemPlace;

/**
 * A JSON path into the project, cut into its parts: {@code $.loads[0].branches[1].ohms} has the parts loads[0], branches[1] and ohms.
 *
 * @param text the whole path
 * @param parts from the outside in
 */
record ProjectPath(String text, List<Part> parts) {
    private static final Map<ProblemPlace.Section, String> STARTS = Map.of(
            ProblemPlace.Section.AMPLIFIER, "$.amplifier",
            ProblemPlace.Section.RATINGS, "$.amplifier.ratings",
            ProblemPlace.Section.BENCH, "$.bench",
            ProblemPlace.Section.METERS, "$.bench.meters",
            ProblemPlace.Section.PARTS, "$.bench.parts",
            ProblemPlace.Section.LOADS, "$.loads",
            ProblemPlace.Section.PLAN, "$.plan",
            ProblemPlace.Section.SHEET, "$.sheet",
            ProblemPlace.Section.LOG, "log");

    private static final Pattern PART = Pattern.compile("\\.([A-Za-z0-9_-]+)(?:\\[(\\d{1,9})])?");

    /**
     * One part.
     *
     * @param name of the field
     * @param index in the list that the field holds, when the path goes on into it
     */
    record Part(String name, OptionalInt index) {}

    ProjectPath {
        parts = List.copyOf(parts);
    }

    /** Returns the path, or empty when the text is none, such as a file's name. */
    static Optional<ProjectPath> parse(String where) {
        if (!where.startsWith("$")) {
            return Optional.empty();
        }
        List<Part> parts = new ArrayList<>();
        Matcher matcher = PART.matcher(where);
        int end = 1;
        while (end < where.length()) {
            if (!matcher.find(end) || matcher.start() != end) {
                return Optional.empty();
            }
            String index = matcher.group(2);
            parts.add(new Part(
                    matcher.group(1), index == null ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(index))));
            end = matcher.end();
        }
        return Optional.of(new ProjectPath(where, parts));
    }

    /** Returns the path of a place, or empty when it is none in the project. */
    static Optional<ProjectPath> of(ProblemPlace place) {
        String start = STARTS.getOrDefault(place.section(), "");
        String index = place.index().isPresent() ? "[" + place.index().getAsInt() + "]" : "";
        String field = place.field().isEmpty() || start.isEmpty() ? place.field() : "." + place.field();
        return parse(start + index + field);
    }

    /** Returns the name of the part at a depth from 0, or the empty text. */
    String name(int depth) {
        return depth < parts.size() ? parts.get(depth).name() : "";
    }

    /** Returns the index of the part at a depth from 0, or -1. */
    int index(int depth) {
        return depth < parts.size() ? parts.get(depth).index().orElse(-1) : -1;
    }

    /** Returns the names from a depth on, joined by dots: "accuracy.fixed"; the empty text at the end of the path. */
    String rest(int depth) {
        return String.join(".", parts.stream().skip(depth).map(Part::name).toList());
    }
}
