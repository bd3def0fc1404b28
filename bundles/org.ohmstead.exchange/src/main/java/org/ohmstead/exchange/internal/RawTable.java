// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.util.Optional;
import org.ohmstead.exchange.ExchangeException;

/** Rows of a table from elsewhere, one after the other; blank ones are left out. */
interface RawTable extends AutoCloseable {
    /** Returns the next row with content, or empty at the end. */
    Optional<RawRow> next() throws IOException, ExchangeException;

    /** Returns the decimal mark of numbers that stand as text. */
    char decimalMark();

    /** Returns whether texts may have been guarded against being taken for formulas. */
    boolean guarded();

    /** Returns the earlier of two dates between which some spreadsheets differ as the first of their calendar: 1900 or 1904. */
    int firstYear();

    @Override
    void close() throws IOException;
}
