// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.ohmstead.history.PricePerWatt;
import org.ohmstead.history.SubjectDifference;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.history.ui.internal.TextTable.Cell;
import org.ohmstead.history.ui.internal.TextTable.Head;
import org.ohmstead.history.ui.internal.TextTable.Line;
import org.ohmstead.history.ui.internal.TextTable.Look;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** The powers of what is compared, each against the first, with what a watt costs. */
final class PowersTable {
    private static final Messages TEXTS = Messages.of(PowersTable.class);
    private static final String DASH = "\u2013";
    private static final int UNCERTAINTY = 3;
    private static final int ADJUSTED = 9;
    private static final double PERCENT = 100;

    private final TextTable table;

    PowersTable(Composite parent) {
        table = new TextTable(
                parent,
                "compare.powers",
                List.of(
                        Head.of("powers.number", true, 5),
                        Head.of("powers.amplifier", false, 28),
                        Head.of("powers.power", true, 11),
                        Head.of("powers.uncertainty", true, 13),
                        Head.of("powers.against", true, 19),
                        Head.of("powers.percent", true, 8),
                        Head.of("powers.means", false, 28),
                        Head.of("powers.price", true, 13),
                        Head.of("powers.perWatt", true, 13),
                        Head.of("powers.adjusted", true, 20)));
    }

    Table control() {
        return table.control();
    }

    void copy() {
        table.control().deselectAll();
        table.copy();
    }

    void show(CompareAnswer answer, String basePeriod) {
        table.title(UNCERTAINTY, TEXTS.text("powers.uncertainty.shown", Coverage.words()));
        table.title(
                ADJUSTED,
                basePeriod.isEmpty() ? TEXTS.text("powers.adjusted") : TEXTS.text("powers.adjusted.in", basePeriod));
        table.show(() -> lines(answer));
    }

    private static List<Line> lines(CompareAnswer answer) {
        List<Line> lines = new ArrayList<>();
        int number = 0;
        for (SubjectPower power : answer.powers()) {
            number++;
            Estimate watts = power.watts();
            Stated stated = Shown.stated(watts.value(), watts.standardUncertainty());
            Optional<SubjectDifference> difference = answer.toFirst(power);
            Optional<PricePerWatt> price = answer.price(power);
            List<Cell> cells = new ArrayList<>(List.of(
                    Cell.of(Integer.toString(number)),
                    Cell.of(power.subject().name(), power.sentence()),
                    Cell.of(
                            stated.value(),
                            stated.text() + "\u00a0W (" + Coverage.wordsWithShare() + "). " + power.sentence()),
                    Cell.of(stated.expanded())));
            cells.addAll(differenceCells(difference));
            cells.addAll(priceCells(price));
            lines.add(new Line(power.subject().name(), cells));
        }
        return lines;
    }

    private static List<Cell> differenceCells(Optional<SubjectDifference> difference) {
        if (difference.isEmpty()) {
            return List.of(Cell.of(DASH), Cell.of(DASH), new Cell(TEXTS.text("powers.first"), "", Look.MUTED, false));
        }
        SubjectDifference found = difference.get();
        String hover = Numbers.inSentence(found.sentence());
        Estimate watts = found.watts();
        String rounded = Shown.rounded(watts.value(), watts.standardUncertainty());
        // The library holds the first against the other, the table the other against the first.
        String turned =
                rounded.startsWith("-") ? "+" + rounded.substring(1) : isZero(rounded) ? rounded : "-" + rounded;
        double share = found.second().own().value() / found.first().own().value() - 1;
        boolean real = found.significant();
        return List.of(
                Cell.of(turned, hover),
                Cell.of(Shown.signed(PERCENT * share, 1), hover),
                new Cell(
                        TEXTS.text(!real ? "powers.same" : watts.value() < 0 ? "powers.more" : "powers.less"),
                        hover,
                        real ? Look.PLAIN : Look.MUTED,
                        false));
    }

    private static boolean isZero(String number) {
        return number.chars().noneMatch(digit -> digit >= '1' && digit <= '9');
    }

    private static List<Cell> priceCells(Optional<PricePerWatt> price) {
        if (price.isEmpty()) {
            Cell none = new Cell(DASH, TEXTS.text("powers.noPrice"), Look.MUTED, false);
            return List.of(none, none, none);
        }
        PricePerWatt found = price.get();
        String currency = "\u00a0" + found.price().currency();
        String hover = Numbers.inSentence(found.sentence());
        return List.of(
                Cell.of(
                        Shown.fixed(found.price().amount(), 2) + currency,
                        TEXTS.text("powers.paid", found.price().on().toString())),
                Cell.of(Shown.fixed(found.perWatt().value(), 2) + currency + "/W", hover),
                found.adjustedPerWatt()
                        .map(adjusted -> Cell.of(Shown.fixed(adjusted.value(), 2) + currency + "/W", hover))
                        .orElse(new Cell(DASH, TEXTS.text("powers.adjusted.none"), Look.MUTED, false)));
    }
}
