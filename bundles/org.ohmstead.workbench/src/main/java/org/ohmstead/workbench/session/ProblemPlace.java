// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where in the workbench the thing can be mended that a problem is about.
 *
 * @param section which part of the project
 * @param index which entry of the section's list, counted from 0, when it is about one
 * @param field path of the field within the section or entry, such as {@code powerWatts} or {@code branches[1].ohms}; in the section LOG
 *     the id of the entry; in OTHER all that is known; empty when it is about the whole
 */
public record ProblemPlace(Section section, OptionalInt index, String field) {
    /** The parts of a project that have a place of their own in the workbench. */
    public enum Section {
        /** The amplifier but for its ratings. */
        AMPLIFIER,
        /** What the amplifier's maker claims. */
        RATINGS,
        /** The bench but for its lists. */
        BENCH,
        /** The bench's instruments. */
        METERS,
        /** The bench's stock of resistors. */
        PARTS,
        /** The loads. */
        LOADS,
        /** The plan. */
        PLAN,
        /** The settings of the results sheet. */
        SHEET,
        /** The test log. */
        LOG,
        /** Anything else. */
        OTHER
    }

    /** How the paths of a section begin, the longest before those it begins with. */
    private record Start(String path, Section section) {}

    private static final List<Start> STARTS = List.of(
            new Start("$.amplifier.ratings", Section.RATINGS),
            new Start("$.amplifier", Section.AMPLIFIER),
            new Start("$.bench.meters", Section.METERS),
            new Start("$.bench.parts", Section.PARTS),
            new Start("$.bench", Section.BENCH),
            new Start("$.loads", Section.LOADS),
            new Start("$.plan", Section.PLAN),
            new Start("$.sheet", Section.SHEET));

    private static final Pattern REST = Pattern.compile("(?:\\[(\\d{1,9})\\])?(?:\\.?(.*))?");
    private static final Pattern LOG = Pattern.compile("log\\.db(?:#(.*))?");

    public ProblemPlace {
        Objects.requireNonNull(section, "section");
        Objects.requireNonNull(index, "index");
        Objects.requireNonNull(field, "field");
    }

    /**
     * Reads the place of a {@link org.ohmstead.model.Problem}.
     *
     * @param where a JSON path into the project, {@code log.db}, {@code log.db#ENTRY}, or anything else, which gives OTHER
     */
    public static ProblemPlace parse(String where) {
        Matcher log = LOG.matcher(where);
        if (log.matches()) {
            return new ProblemPlace(Section.LOG, OptionalInt.empty(), log.group(1) == null ? "" : log.group(1));
        }
        return STARTS.stream()
                .filter(start -> begins(where, start.path()))
                .findFirst()
                .map(start ->
                        within(start.section(), where.substring(start.path().length())))
                .orElseGet(() -> new ProblemPlace(Section.OTHER, OptionalInt.empty(), where));
    }

    private static boolean begins(String where, String path) {
        return where.startsWith(path)
                && (where.length() == path.length() || ".[".indexOf(where.charAt(path.length())) >= 0);
    }

    private static ProblemPlace within(Section section, String rest) {
        Matcher matcher = REST.matcher(rest);
        if (!matcher.matches()) {
            return new ProblemPlace(section, OptionalInt.empty(), rest);
        }
        OptionalInt index =
                matcher.group(1) == null ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(matcher.group(1)));
        return new ProblemPlace(section, index, matcher.group(2));
    }
}
