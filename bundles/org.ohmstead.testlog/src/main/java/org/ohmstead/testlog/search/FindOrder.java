// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Objects;

/**
 * How found entries are put in order. Equal ones keep the order of the log, turned round when falling; entries that lack the column come
 * last either way.
 *
 * @param column what to order by
 * @param falling whether the greatest comes first
 */
public record FindOrder(IndexColumn column, boolean falling) {
    /** The order of the log, from its beginning. */
    public static final FindOrder AS_LOGGED = new FindOrder(IndexColumn.PLACE, false);

    /** The order of the log, the newest first. */
    public static final FindOrder NEWEST_FIRST = new FindOrder(IndexColumn.PLACE, true);

    public FindOrder {
        Objects.requireNonNull(column, "column");
    }
}
