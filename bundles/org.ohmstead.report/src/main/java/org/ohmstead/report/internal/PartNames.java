// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Tick;
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.budget.ReadingBudget;

/**
 * What the parts of a budget are called on the sheet. Readings are logged with English names, whatever the language of the day was;
 * those that our own measurements give are said in the sheet's language, others stay as they are.
 */
final class PartNames {
    /** A second part of the same name has a number behind it. */
    private static final Pattern NUMBERED = Pattern.compile("(.*)( \\(\\d+\\))");

    private static final int LONGEST_ON_AXIS = 34;

    private final Speech speech;

    PartNames(Speech speech) {
        this.speech = speech;
    }

    /** Returns the name for a part that is logged as {@code source}. */
    String of(String source) {
        Matcher numbered = NUMBERED.matcher(source);
        if (numbered.matches()) {
            return of(numbered.group(1)) + numbered.group(2);
        }
        String whole = key(source);
        if (speech.has(whole)) {
            return speech.text(whole);
        }
        // Of a meter: what it reads, and why that is uncertain.
        List<String> pieces = List.of(source.split(", "));
        boolean known = pieces.size() > 1 && pieces.stream().allMatch(piece -> speech.has(key(piece)));
        return known ? pieces.stream().map(piece -> speech.text(key(piece))).collect(Collectors.joining(", ")) : source;
    }

    private static String key(String words) {
        return "part." + words.replace(",", "").replace(' ', '_');
    }

    /** Returns the bars of a budget with these names. */
    Plot bars(ReadingBudget budget) {
        Plot plot = budget.bars();
        List<BudgetLine> lines = budget.lines();
        List<Tick> ticks = plot.y().ticks().stream()
                .map(tick -> new Tick(tick.value(), onAxis(tick.label(), lines)))
                .toList();
        Axis watts = plot.x();
        return plot.withAxes(watts, plot.y().withTicks(ticks));
    }

    private String onAxis(String label, List<BudgetLine> lines) {
        return Stream.concat(
                        lines.stream().map(BudgetLine::source).filter(source -> shortened(source)
                                .equals(label)),
                        Stream.of(label))
                .findFirst()
                .map(source -> shortened(of(source)))
                .orElse(label);
    }

    private static String shortened(String name) {
        return PlainText.shortened(name, LONGEST_ON_AXIS);
    }
}
