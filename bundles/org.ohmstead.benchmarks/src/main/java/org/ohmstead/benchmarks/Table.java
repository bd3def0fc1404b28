// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** The table that people read, and the lines that programs read. */
final class Table {
    private static final int COLUMNS = 6;
    private static final String NONE = "-";

    private Table() {}

    /** Returns the table: row, ours, reference, ratio, goal, met or not. */
    static String text(List<Outcome> outcomes) {
        List<String[]> lines = new ArrayList<>();
        lines.add(new String[] {"row", "Ohmstead", "reference", "ratio", "goal", ""});
        for (Outcome outcome : outcomes) {
            lines.add(cells(outcome));
        }
        int[] widths = new int[COLUMNS];
        for (String[] line : lines) {
            for (int i = 0; i < COLUMNS; i++) {
                widths[i] = Math.max(widths[i], line[i].length());
            }
        }
        StringBuilder text = new StringBuilder();
        for (String[] line : lines) {
            StringBuilder row = new StringBuilder();
            for (int i = 0; i < COLUMNS; i++) {
                String gap = " ".repeat(widths[i] - line[i].length());
                // Names and words to the left, numbers to the right.
                boolean number = i == 1 || i == 2;
                row.append(number ? gap + line[i] : line[i] + gap).append("  ");
            }
            text.append(row.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static String[] cells(Outcome outcome) {
        String ratio = outcome.ours().isPresent()
                ? outcome.goal().ratioText(outcome.ours().getAsDouble(), outcome.reference())
                : NONE;
        return new String[] {
            outcome.name(),
            value(outcome.ours(), outcome.unit()),
            value(outcome.reference(), outcome.unit()),
            ratio,
            outcome.goal().text(outcome.unit()),
            verdict(outcome)
        };
    }

    private static String verdict(Outcome outcome) {
        if (outcome.goal() instanceof Goal.Shown) {
            return "";
        }
        return outcome.isMet() ? "met" : "missed";
    }

    /** Returns three digits with the unit that suits, such as "12.3 ms". */
    static String value(OptionalDouble value, String unit) {
        if (value.isEmpty()) {
            return NONE;
        }
        double number = value.getAsDouble();
        if (unit.equals("s") && number < 1) {
            return number < 1e-3 ? digits(number * 1e6) + " us" : digits(number * 1e3) + " ms";
        }
        return digits(number) + " " + unit;
    }

    private static String digits(double value) {
        double size = Math.abs(value);
        String pattern = size >= 100 ? "%.0f" : size >= 10 ? "%.1f" : "%.2f";
        return String.format(Locale.ROOT, pattern, value);
    }

    /** Returns a line for programs: words with an equals sign between spaces; what there is not is left out. */
    static String machineLine(Outcome outcome) {
        StringBuilder line = new StringBuilder("bench row=" + outcome.name());
        outcome.ours().ifPresent(value -> line.append(" ours=").append(number(value)));
        outcome.reference().ifPresent(value -> line.append(" reference=").append(number(value)));
        line.append(" unit=").append(outcome.unit());
        if (outcome.ours().isPresent()) {
            outcome.goal()
                    .ratio(outcome.ours().getAsDouble(), outcome.reference())
                    .ifPresent(ratio -> line.append(" ratio=").append(number(ratio)));
        }
        line.append(" goal=\"").append(outcome.goal().text(outcome.unit())).append('"');
        String met = outcome.isMet() ? "yes" : "no";
        return line.append(" met=")
                .append(outcome.goal() instanceof Goal.Shown ? "none" : met)
                .toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.6g", value);
    }
}
