// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.units.text.Messages;

/**
 * A stock in one line, such as {@code 2R7,3R9,5R6x2,10,8R2J@50Wx3}: values as in {@link NetworkNotation}, commas between them, and x with
 * a number for more than one piece. The id of a kind is its value as written; a kind that is written twice counts together.
 */
public final class StockNotation {
    private static final Messages TEXTS = Messages.of(StockNotation.class);

    private static final int MOST_OF_A_KIND = 10_000;

    private final String text;
    private final double toleranceRatio;
    private final Map<String, Stock.Item> items = new LinkedHashMap<>();

    private StockNotation(String text, double toleranceRatio) {
        this.text = text;
        this.toleranceRatio = toleranceRatio;
    }

    /**
     * Reads a stock.
     *
     * @param text the values
     * @param defaultToleranceRatio tolerance of values that state none, 0 to 1
     * @throws NotationException when it cannot be read
     */
    public static Stock parse(String text, double defaultToleranceRatio) throws NotationException {
        Checks.present(text, "text");
        Checks.within(defaultToleranceRatio, 0, 1, "defaultToleranceRatio");
        if (text.length() > NetworkNotation.LONGEST) {
            throw new NotationException(
                    text,
                    NetworkNotation.LONGEST,
                    TEXTS.text(
                            "stockList.long",
                            Integer.toString(text.length()),
                            Integer.toString(NetworkNotation.LONGEST)),
                    TEXTS.text("stockList.longRemedy"));
        }
        return new StockNotation(text, defaultToleranceRatio).read();
    }

    private Stock read() throws NotationException {
        int start = 0;
        while (start <= text.length()) {
            int comma = text.indexOf(',', start);
            int end = comma < 0 ? text.length() : comma;
            item(start, end);
            start = end + 1;
        }
        return new Stock(List.copyOf(items.values()));
    }

    private void item(int from, int to) throws NotationException {
        int start = from;
        int end = to;
        while (start < end && Character.isWhitespace(text.charAt(start))) {
            start++;
        }
        while (end > start && Character.isWhitespace(text.charAt(end - 1))) {
            end--;
        }
        if (start == end) {
            throw new NotationException(
                    text, from, TEXTS.text("stockList.missing"), TEXTS.text("stockList.missingRemedy"));
        }
        int times = times(start, end);
        int count = times < 0 ? 1 : count(times + 1, end);
        int valueEnd = times < 0 ? end : times;
        Resistor resistor;
        try {
            ResistanceText.Value value = ResistanceText.read(text, start, valueEnd);
            resistor = OperandReader.resistor(text.substring(start, valueEnd), value, toleranceRatio);
        } catch (ResistanceText.Fault fault) {
            throw fault.said();
        }
        Stock.Item before = items.get(resistor.id());
        int together = count + (before == null ? 0 : before.count());
        if (together > MOST_OF_A_KIND) {
            throw tooMany(times < 0 ? start : times + 1);
        }
        items.put(resistor.id(), new Stock.Item(resistor, together));
    }

    private int times(int start, int end) {
        for (int i = start; i < end; i++) {
            if ("xX\u00d7".indexOf(text.charAt(i)) >= 0) {
                return i;
            }
        }
        return -1;
    }

    private int count(int start, int end) throws NotationException {
        int count = 0;
        for (int i = start; i < end; i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                throw new NotationException(
                        text, i, TEXTS.text("stockList.digits"), TEXTS.text("stockList.countRemedy"));
            }
            count = Math.min(count * 10 + digit, MOST_OF_A_KIND + 1);
        }
        if (count == 0) {
            throw new NotationException(
                    text, start, TEXTS.text("stockList.leastOne"), TEXTS.text("stockList.countRemedy"));
        }
        if (count > MOST_OF_A_KIND) {
            throw tooMany(start);
        }
        return count;
    }

    private NotationException tooMany(int position) {
        return new NotationException(
                text,
                position,
                TEXTS.text("stockList.many", Integer.toString(MOST_OF_A_KIND)),
                TEXTS.text("stockList.manyRemedy", Integer.toString(MOST_OF_A_KIND)));
    }
}
