// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reads the tables that come with the bundle: lines with commas, the first one names the columns, lines with # are
 * for people.
 */
final class SupplyTable {
    private SupplyTable() {}

    /** One line of a table. */
    record Row(List<String> columns, List<String> cells) {
        String text(String column) {
            int index = columns.indexOf(column);
            if (index < 0) {
                throw new IllegalArgumentException("column \"" + column + "\" is not one of " + columns);
            }
            return cells.get(index);
        }

        double number(String column) {
            return Double.parseDouble(text(column));
        }

        OptionalDouble numberIfAny(String column) {
            return text(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
        }
    }

    static List<Row> rows(String name) {
        try (InputStream stream = SupplyTable.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("The table " + name + " is missing in the bundle; install it again.");
            }
            List<List<String>> lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> Arrays.stream(line.split(",", -1))
                            .map(String::strip)
                            .toList())
                    .toList();
            List<String> columns = lines.get(0);
            return lines.stream().skip(1).map(cells -> new Row(columns, cells)).toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(
                    "The table " + name + " of the bundle cannot be read; install it again.", failed);
        }
    }
}
