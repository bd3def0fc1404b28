// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.ohmstead.testlog.EntryKind;

/** The ids that a chain has given, by kind: a bit for each number, since they are counted up. */
final class KnownIds {
    private static final int LEAST_DIGITS = 4;
    private static final int MOST_DIGITS = 15;

    /** Numbers above this are kept one by one: a forged one must not make a bit set of gigabytes. */
    private static final long MOST_BITS = 1L << 26;

    private final Map<EntryKind, BitSet> numbers = new EnumMap<>(EntryKind.class);
    private final Set<String> odd = new HashSet<>();

    KnownIds() {}

    KnownIds(KnownIds other) {
        other.numbers.forEach((kind, bits) -> numbers.put(kind, (BitSet) bits.clone()));
        odd.addAll(other.odd);
    }

    /** Returns the number in an id of a kind, or -1 when the id does not fit the kind. */
    static long number(byte[] id, EntryKind kind) {
        int digits = id.length - 1;
        if (digits < LEAST_DIGITS || digits > MOST_DIGITS || id[0] != kind.idPrefix()) {
            return -1;
        }
        long number = 0;
        for (int at = 1; at < id.length; at++) {
            int digit = id[at] - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            number = 10 * number + digit;
        }
        return number;
    }

    private static boolean usual(byte[] id, long number) {
        return number < MOST_BITS && (id.length == LEAST_DIGITS + 1 || id[1] != '0');
    }

    /** Takes an id in; returns whether it is new. */
    boolean add(byte[] id, EntryKind kind, long number) {
        if (!usual(id, number)) {
            return odd.add(RawRow.text(id));
        }
        BitSet bits = numbers.computeIfAbsent(kind, none -> new BitSet());
        boolean isNew = !bits.get((int) number);
        bits.set((int) number);
        return isNew;
    }

    /** Returns whether an id was given. */
    boolean has(byte[] id) {
        for (EntryKind kind : EntryKind.values()) {
            long number = number(id, kind);
            if (number >= 0) {
                BitSet bits = numbers.get(kind);
                return usual(id, number) ? bits != null && bits.get((int) number) : odd.contains(RawRow.text(id));
            }
        }
        return false;
    }
}
