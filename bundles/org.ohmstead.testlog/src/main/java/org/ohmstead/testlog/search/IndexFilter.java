// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds the rows that meet a query: each condition in turn thins out the rows of a stretch. */
final class IndexFilter {
    /** Leaves of some places of a stretch those that meet a condition; of several stretches at once, on several threads. */
    private interface Condition {
        int thin(int segment, int[] places, int count);
    }

    /** Whether a value is wanted. */
    private interface Wanted {
        boolean holds(long value);
    }

    private final IndexColumns columns;
    private final List<Condition> conditions = new ArrayList<>();

    private IndexFilter(IndexColumns columns) {
        this.columns = columns;
    }

    /** Returns the rows that meet a query, rising; null when all do. */
    static int[] rows(IndexColumns columns, Find find) throws SQLException, BlockCode.DamagedException {
        IndexFilter filter = new IndexFilter(columns);
        filter.addAll(find);
        return filter.conditions.isEmpty() ? null : filter.run();
    }

    private int[] run() {
        int[][] found = new int[columns.segments()][];
        Stretches.each(found.length, segment -> found[segment] = found(segment));
        int[] all = new int[Arrays.stream(found).mapToInt(some -> some.length).sum()];
        int count = 0;
        for (int[] some : found) {
            System.arraycopy(some, 0, all, count, some.length);
            count += some.length;
        }
        return all;
    }

    private int[] found(int segment) {
        int[] places = new int[IndexColumns.SEGMENT];
        Arrays.setAll(places, at -> at);
        int left = columns.size(segment);
        for (Condition condition : conditions) {
            left = condition.thin(segment, places, left);
        }
        int first = segment << IndexColumns.SEGMENT_BITS;
        int[] rows = new int[left];
        for (int at = 0; at < left; at++) {
            rows[at] = first + places[at];
        }
        return rows;
    }

    private void addAll(Find find) throws SQLException, BlockCode.DamagedException {
        oneOf(IndexField.KIND, find.kinds());
        oneOf(IndexField.STATE, find.states());
        if (find.mode().isPresent()) {
            oneOf(IndexField.MODE, Set.of(find.mode().get()));
        }
        if (find.overdueOnly()) {
            column(IndexField.OVERDUE, value -> value == 1);
        }
        if (find.loadOhms().isPresent()) {
            long ohms = IndexField.ofDouble(find.loadOhms().getAsDouble());
            column(IndexField.LOAD_OHMS, value -> value == ohms);
        }
        if (!find.chain().isEmpty()) {
            pattern(IndexField.CHAIN, find.chain().equalsIgnoreCase(Find.OWN_CHAIN) ? "" : find.chain());
        }
        text(IndexField.AMPLIFIER, find.amplifier());
        text(IndexField.SERIAL, find.serialNumber());
        text(IndexField.BENCH, find.bench());
        text(IndexField.OPERATOR, find.operator());
        text(IndexField.LOAD, find.loadId());
        text(IndexField.STEP, find.stepId());
        time(find.from(), find.to());
        for (FigureRange range : find.ranges()) {
            range(range);
        }
        for (String word : find.words()) {
            conditions.add(new WordCondition(columns, word)::thin);
        }
    }

    private void oneOf(IndexField field, Set<? extends Enum<?>> wanted)
            throws SQLException, BlockCode.DamagedException {
        if (!wanted.isEmpty()) {
            long mask = wanted.stream().mapToLong(each -> 1L << each.ordinal()).reduce(0, (one, other) -> one | other);
            column(field, value -> value >= 0 && (mask >>> value & 1) != 0);
        }
    }

    private void column(IndexField field, Wanted wanted) throws SQLException, BlockCode.DamagedException {
        long[][] values = columns.values(field);
        conditions.add((segment, places, count) -> {
            long[] stretch = values[segment];
            int left = 0;
            for (int at = 0; at < count; at++) {
                if (wanted.holds(stretch[places[at]])) {
                    places[left++] = places[at];
                }
            }
            return left;
        });
    }

    private void text(IndexField field, String pattern) throws SQLException, BlockCode.DamagedException {
        if (!pattern.isEmpty()) {
            pattern(field, pattern);
        }
    }

    private void pattern(IndexField field, String pattern) throws SQLException, BlockCode.DamagedException {
        Pattern compiled = Pattern.compile(
                Arrays.stream(pattern.toLowerCase(Locale.ROOT).split("\\*", -1))
                        .map(Pattern::quote)
                        .collect(Collectors.joining(".*")),
                Pattern.DOTALL);
        Words[] words = columns.words(field);
        boolean[] wanted = new boolean[words.length << IndexColumns.SEGMENT_BITS];
        for (int segment = 0; segment < words.length; segment++) {
            for (int place = 0; place < words[segment].size(); place++) {
                wanted[segment << IndexColumns.SEGMENT_BITS | place] =
                        compiled.matcher(words[segment].foldedText(place)).matches();
            }
        }
        boolean none = compiled.matcher("").matches();
        column(field, value -> value == IndexField.ABSENT ? none : wanted[(int) value]);
    }

    private void time(Optional<Instant> from, Optional<Instant> to) throws SQLException, BlockCode.DamagedException {
        if (from.isEmpty() && to.isEmpty()) {
            return;
        }
        long least = from.map(IndexRow::nanos).orElse(Long.MIN_VALUE);
        long end = to.map(IndexRow::nanos).orElse(Long.MAX_VALUE);
        long[][] taken = columns.values(IndexField.TAKEN);
        long[][] recorded = columns.values(IndexField.RECORDED);
        conditions.add((segment, places, count) -> {
            int left = 0;
            for (int at = 0; at < count; at++) {
                long moment = taken[segment][places[at]];
                moment = moment == IndexField.ABSENT ? recorded[segment][places[at]] : moment;
                if (moment >= least && moment < end) {
                    places[left++] = places[at];
                }
            }
            return left;
        });
    }

    private void range(FigureRange range) throws SQLException, BlockCode.DamagedException {
        long least = IndexField.ofDouble(range.least());
        long most = IndexField.ofDouble(range.most());
        Wanted inRange = value -> value >= least && value <= most;
        switch (range.figureId()) {
            case FigureRange.POWER -> column(IndexField.POWER, inRange);
            case FigureRange.THD -> column(IndexField.THD, inRange);
            case FigureRange.SUPPLY -> column(IndexField.SUPPLY, inRange);
            default -> measured(columns.figureIds().indexOf(range.figureId()), inRange);
        }
    }

    private void measured(int figure, Wanted inRange) throws SQLException, BlockCode.DamagedException {
        if (figure < 0) {
            conditions.add((segment, places, count) -> 0);
            return;
        }
        IndexColumns.Figures[] figures = columns.figures(figure);
        conditions.add((segment, places, count) -> {
            boolean[] wanted = new boolean[IndexColumns.SEGMENT];
            IndexColumns.Figures some = figures[segment];
            for (int at = 0; some != null && at < Math.min(some.places().length, some.figures().length); at++) {
                wanted[(int) some.places()[at] & IndexColumns.SEGMENT - 1] |= inRange.holds(some.figures()[at]);
            }
            int left = 0;
            for (int at = 0; at < count; at++) {
                if (wanted[places[at]]) {
                    places[left++] = places[at];
                }
            }
            return left;
        });
    }
}
