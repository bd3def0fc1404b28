// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.List;

/**
 * Hears of a change that the user made in a table.
 *
 * @param <R> a row
 */
@FunctionalInterface
public interface RowsChange<R> {
    /**
     * Takes the change over.
     *
     * @param editName what was done, such as "Remove 2 ratings"
     * @param newRows all rows after it, in the original order
     * @throws IllegalArgumentException to refuse it: the message is shown below the table and the rows stay as they were
     */
    void accept(String editName, List<R> newRows);
}
