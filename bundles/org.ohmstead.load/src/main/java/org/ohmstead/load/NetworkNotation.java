// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;

/**
 * Networks in the trade's own writing: {@code +} for series, {@code ||} for parallel, which binds tighter, and round brackets, such as
 * {@code (8R2||8R2||15)+(3R3||0R47)}.
 *
 * <p>What stands between those signs, up to the next space, {@code +}, {@code |}, bracket or double quote, is one word. A word that is the
 * id of a part of the stock is that part. Otherwise it is a value: 8R2, 0R47, R47, 4.7, 1k, 4K7; then perhaps a tolerance letter of IEC
 * 60062 (8R2J is 5 %), then perhaps a rating (8R2J@50W). A rating written so holds up to 25 degrees Celsius and falls to zero at 250, the
 * characteristic of chassis-mounted wirewound parts in MIL-PRF-39009. An id that has spaces or any of those signs in it stands in double
 * quotes, a quote inside it written twice.
 */
public final class NetworkNotation {
    /** The longest text that is read, in characters. */
    public static final int LONGEST = 20_000;

    /** How deep brackets may lie in one another. */
    public static final int DEEPEST = 100;

    /** The temperature in degrees Celsius up to which a rating written in the notation holds. */
    public static final double RATED_TO_CELSIUS = 25;

    /** The temperature in degrees Celsius at which a rating written in the notation has fallen to zero. */
    public static final double ZERO_POWER_CELSIUS = 250;

    /**
     * How to read.
     *
     * @param toleranceRatio tolerance of values that state none, 0 to 1
     * @param valuesFromStock whether a bare value that exactly one kind of part in the stock has stands for that part; if more than one
     *     kind has it, it is a fault that asks for the id
     * @param countsChecked whether it is a fault to use more pieces of a part than the stock has
     */
    public record Options(double toleranceRatio, boolean valuesFromStock, boolean countsChecked) {
        /** Values have 5 %, stand for the parts of the stock that have them, and pieces are counted. */
        public static final Options USUAL = new Options(0.05, true, true);

        public Options {
            Checks.within(toleranceRatio, 0, 1, "toleranceRatio");
        }

        /** Returns these options with another tolerance for values that state none. */
        public Options withToleranceRatio(double newToleranceRatio) {
            return new Options(newToleranceRatio, valuesFromStock, countsChecked);
        }

        /** Returns these options with another answer: whether bare values stand for parts of the stock. */
        public Options withValuesFromStock(boolean newValuesFromStock) {
            return new Options(toleranceRatio, newValuesFromStock, countsChecked);
        }

        /** Returns these options with another answer: whether pieces are counted. */
        public Options withCountsChecked(boolean newCountsChecked) {
            return new Options(toleranceRatio, valuesFromStock, newCountsChecked);
        }
    }

    private NetworkNotation() {}

    /**
     * Reads a network in the usual way.
     *
     * @param text the network
     * @param stock the parts that ids speak of; {@link Stock#EMPTY} for values alone
     * @throws NotationException when it cannot be read or uses more pieces than there are
     */
    public static Network parse(String text, Stock stock) throws NotationException {
        return parse(text, stock, Options.USUAL);
    }

    /**
     * Reads a network.
     *
     * @param text the network
     * @param stock the parts that ids speak of; {@link Stock#EMPTY} for values alone
     * @param options how to read
     * @throws NotationException when it cannot be read or, where that is checked, uses more pieces than there are
     */
    public static Network parse(String text, Stock stock, Options options) throws NotationException {
        Checks.present(text, "text");
        Checks.present(stock, "stock");
        Checks.present(options, "options");
        return new NetworkParser(text, new OperandReader(text, stock, options)).parse();
    }

    /** Returns a network with the fewest brackets; ids that need them stand in quotes. Read again, it gives the same network. */
    public static String format(Network network) {
        StringBuilder out = new StringBuilder();
        append(Checks.present(network, "network"), out);
        return out.toString();
    }

    private static void append(Network network, StringBuilder out) {
        if (network instanceof Network.Single single) {
            out.append(word(single.resistor().id()));
            return;
        }
        boolean series = network instanceof Network.Series;
        List<Network> members = NetworkAnalysis.members(network);
        for (int i = 0; i < members.size(); i++) {
            if (i > 0) {
                out.append(series ? "+" : "||");
            }
            boolean bracketed = !series && members.get(i) instanceof Network.Series;
            if (bracketed) {
                out.append('(');
            }
            append(members.get(i), out);
            if (bracketed) {
                out.append(')');
            }
        }
    }

    private static String word(String id) {
        return id.chars().anyMatch(letter -> OperandReader.endsWord((char) letter))
                ? '"' + id.replace("\"", "\"\"") + '"'
                : id;
    }
}
