// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;

/** Makes the line of a table from what the index keeps of an entry. */
final class EntryOfRow {
    private static final EntryKind[] KINDS = EntryKind.values();
    private static final Mode[] MODES = Mode.values();
    private static final EndPointOutcome[] OUTCOMES = EndPointOutcome.values();
    private static final EntryState[] STATES = EntryState.values();

    private EntryOfRow() {}

    /**
     * Returns the line of an entry.
     *
     * @param line what the index keeps of it
     * @param state its state now, which may have changed since
     */
    static IndexedEntry entry(IndexRow line, long state) throws BlockCode.DamagedException {
        String chain = line.word(IndexField.CHAIN);
        EntryKind kind = one(KINDS, line.value(IndexField.KIND))
                .orElseThrow(() -> new BlockCode.DamagedException("an entry without a kind"));
        long taken = line.value(IndexField.TAKEN);
        return new IndexedEntry(
                chain,
                line.value(IndexField.SEQUENCE),
                id(line, chain, kind),
                kind,
                IndexRow.moment(line.value(IndexField.RECORDED)),
                taken == IndexField.ABSENT ? Optional.empty() : Optional.of(IndexRow.moment(taken)),
                line.word(IndexField.AMPLIFIER),
                line.word(IndexField.SERIAL),
                line.word(IndexField.BENCH),
                line.word(IndexField.OPERATOR),
                one(MODES, line.value(IndexField.MODE)),
                line.word(IndexField.LOAD),
                figure(line, IndexField.LOAD_OHMS),
                figure(line, IndexField.SUPPLY),
                line.word(IndexField.STEP),
                line.word(IndexField.STIMULUS),
                line.word(IndexField.MEASUREMENT),
                figure(line, IndexField.POWER),
                figure(line, IndexField.UNCERTAINTY),
                figure(line, IndexField.THD),
                one(OUTCOMES, line.value(IndexField.OUTCOME)),
                one(STATES, state).orElseThrow(() -> new BlockCode.DamagedException("an entry without a state")),
                line.value(IndexField.OVERDUE) == 1,
                line.word(IndexField.TEXT));
    }

    private static String id(IndexRow line, String chain, EntryKind kind) {
        long number = line.value(IndexField.NUMBER);
        if (number != IndexField.ABSENT) {
            return new EntryAddress(chain, kind, number).id();
        }
        String place = String.format(Locale.ROOT, "?%d", line.value(IndexField.SEQUENCE));
        return chain.isEmpty() ? place : chain + "/" + place;
    }

    private static OptionalDouble figure(IndexRow line, IndexField field) {
        long value = line.value(field);
        return value == IndexField.ABSENT ? OptionalDouble.empty() : OptionalDouble.of(IndexField.toDouble(value));
    }

    private static <T> Optional<T> one(T[] values, long value) {
        return value >= 0 && value < values.length ? Optional.of(values[(int) value]) : Optional.empty();
    }
}
