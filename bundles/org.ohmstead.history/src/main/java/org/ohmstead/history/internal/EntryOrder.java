// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexedEntry;

/** Compares entries of several sources as the index of each has put its own in order. */
public final class EntryOrder {
    private static final Comparator<String> WORDS =
            String.CASE_INSENSITIVE_ORDER.thenComparing(Comparator.naturalOrder());

    private EntryOrder() {}

    /**
     * Returns the order; entries that lack the column come last. The place in the log, its chain and the id say nothing from one log to
     * another: by these, one source comes after the other.
     */
    public static Comparator<IndexedEntry> of(FindOrder order) {
        return switch (order.column()) {
            case PLACE, CHAIN, ID -> (one, other) -> 0;
            case KIND -> by(order, entry -> Optional.of(entry.kind()));
            case RECORDED_AT -> by(order, entry -> Optional.of(entry.recordedAt()));
            case TAKEN_AT -> by(order, entry -> entry.takenAt().or(() -> Optional.of(entry.recordedAt())));
            case MODE -> by(order, IndexedEntry::mode);
            case LOAD_OHMS, SUPPLY_VOLTS, POWER_WATTS, UNCERTAINTY_WATTS, THD_F_RATIO -> byNumber(order, number(order));
            case OUTCOME -> by(order, IndexedEntry::outcome);
            case STATE -> by(order, entry -> Optional.of(entry.state()));
            case OVERDUE -> by(order, entry -> Optional.of(entry.overdue()));
            default -> byWords(order, words(order));
        };
    }

    private static Function<IndexedEntry, OptionalDouble> number(FindOrder order) {
        return switch (order.column()) {
            case LOAD_OHMS -> IndexedEntry::nominalLoadOhms;
            case SUPPLY_VOLTS -> IndexedEntry::supplyVolts;
            case POWER_WATTS -> IndexedEntry::powerWatts;
            case UNCERTAINTY_WATTS -> IndexedEntry::standardUncertaintyWatts;
            default -> IndexedEntry::thdFRatio;
        };
    }

    private static Function<IndexedEntry, String> words(FindOrder order) {
        return switch (order.column()) {
            case AMPLIFIER -> IndexedEntry::amplifier;
            case SERIAL_NUMBER -> IndexedEntry::serialNumber;
            case BENCH -> IndexedEntry::bench;
            case OPERATOR -> IndexedEntry::operator;
            case LOAD_ID -> IndexedEntry::loadId;
            case STEP_ID -> IndexedEntry::stepId;
            case STIMULUS -> IndexedEntry::stimulus;
            case MEASUREMENT -> IndexedEntry::measurement;
            default -> IndexedEntry::text;
        };
    }

    private static <V extends Comparable<? super V>> Comparator<IndexedEntry> by(
            FindOrder order, Function<IndexedEntry, Optional<V>> key) {
        return present(order, key, Comparator.naturalOrder());
    }

    private static Comparator<IndexedEntry> byNumber(FindOrder order, Function<IndexedEntry, OptionalDouble> key) {
        return by(order, entry -> {
            OptionalDouble value = key.apply(entry);
            return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
        });
    }

    private static Comparator<IndexedEntry> byWords(FindOrder order, Function<IndexedEntry, String> key) {
        return present(order, entry -> Optional.of(key.apply(entry)).filter(text -> !text.isEmpty()), WORDS);
    }

    private static <V> Comparator<IndexedEntry> present(
            FindOrder order, Function<IndexedEntry, Optional<V>> key, Comparator<? super V> values) {
        Comparator<? super V> directed = order.falling() ? values.reversed() : values;
        return (one, other) -> {
            Optional<V> first = key.apply(one);
            Optional<V> second = key.apply(other);
            if (first.isPresent() && second.isPresent()) {
                return directed.compare(first.get(), second.get());
            }
            return Boolean.compare(first.isEmpty(), second.isEmpty());
        };
    }
}
