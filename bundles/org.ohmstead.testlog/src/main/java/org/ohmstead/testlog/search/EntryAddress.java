// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.testlog.EntryKind;

/**
 * The id of an entry in parts.
 *
 * @param chain label of its chain; empty for the log's own
 * @param kind what it is
 * @param number which of its kind
 */
record EntryAddress(String chain, EntryKind kind, long number) {
    private static final Pattern FORM = Pattern.compile("(?:([A-Z]{1,5})/)?([A-Z])([0-9]{4,15})");

    /** Returns the parts of an id, or empty when a text is none; small letters will do. */
    static Optional<EntryAddress> of(String id) {
        Matcher parts = FORM.matcher(id.strip().toUpperCase(Locale.ROOT));
        if (!parts.matches()) {
            return Optional.empty();
        }
        String chain = parts.group(1) == null ? "" : parts.group(1);
        long number = Long.parseLong(parts.group(3));
        return Arrays.stream(EntryKind.values())
                .filter(kind -> kind.idPrefix() == parts.group(2).charAt(0))
                .findFirst()
                .map(kind -> new EntryAddress(chain, kind, number));
    }

    String id() {
        String plain = String.format(Locale.ROOT, "%c%04d", kind.idPrefix(), number);
        return chain.isEmpty() ? plain : chain + "/" + plain;
    }

    /** Returns the row of the entry, or -1 when it is not indexed; the newest are looked at first. */
    int row(IndexColumns columns) throws SQLException, BlockCode.DamagedException {
        for (int segment = columns.segments() - 1; segment >= 0; segment--) {
            long[] numbers = columns.values(IndexField.NUMBER, segment);
            for (int place = columns.size(segment) - 1; place >= 0; place--) {
                if (numbers[place] == number) {
                    int row = segment << IndexColumns.SEGMENT_BITS | place;
                    boolean same = columns.value(IndexField.KIND, row) == kind.ordinal()
                            && columns.word(IndexField.CHAIN, row).equals(chain);
                    if (same) {
                        return row;
                    }
                }
            }
        }
        return -1;
    }
}
