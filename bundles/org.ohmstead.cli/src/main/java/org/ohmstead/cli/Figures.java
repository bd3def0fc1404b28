// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Range;

/** Figures that a word shows, gathered once for people and for machines. */
final class Figures {
    private record Row(String label, String value, String unit) {}

    private final List<Row> rows = new ArrayList<>();
    private final ObjectNode document;

    /** Makes an empty collection. */
    Figures(ObjectNode document) {
        this.document = document;
    }

    /** Adds a figure with three digits. */
    void add(String label, String name, double value, String unit) {
        rows.add(new Row(label, Texts.three(value), unit));
        document.put(name, value);
    }

    /** Adds a temperature in degrees Celsius. */
    void celsius(String label, String name, Range celsius) {
        rows.add(new Row(label, Texts.range(celsius, 1), "\u00b0C"));
        Ranges.put(document, name, celsius);
    }

    /** Adds a range with three digits at each end. */
    void add(String label, String name, Range range, String unit) {
        String low = Texts.three(range.low());
        String high = Texts.three(range.high());
        rows.add(new Row(label, low.equals(high) ? low : Texts.between(low, high), unit));
        Ranges.put(document, name, range);
    }

    /** Adds words. */
    void words(String label, String name, String text) {
        rows.add(new Row(label, text, ""));
        document.put(name, text);
    }

    void print(Console console) {
        TextTable table = TextTable.named("figures.columns");
        rows.forEach(row -> table.row(row.label(), row.value(), row.unit()));
        table.print(console);
    }
}
