// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ohmstead.model.PartTraits;
import org.ohmstead.units.text.Messages;

/** Turns words of a network into resistors and counts the pieces used. */
final class OperandReader {
    private static final Messages TEXTS = Messages.of(OperandReader.class);

    private static final double SAME_VALUE = 1e-9;
    private static final int IDS_SHOWN = 5;
    private static final int LETTERS_SHOWN = 40;

    private final String text;
    private final NetworkNotation.Options options;
    private final Map<String, Stock.Item> stock = new LinkedHashMap<>();
    private final Map<String, Integer> used = new HashMap<>();

    OperandReader(String text, Stock stock, NetworkNotation.Options options) {
        this.text = text;
        this.options = options;
        stock.items().forEach(item -> this.stock.put(item.resistor().id(), item));
    }

    static boolean endsWord(char letter) {
        return Character.isWhitespace(letter) || "+|()\"\u2225".indexOf(letter) >= 0;
    }

    /** Returns where the word that starts at a position ends. */
    int end(int start) throws NotationException {
        int at = start;
        if (text.charAt(start) != '"') {
            while (at < text.length() && !endsWord(text.charAt(at))) {
                at++;
            }
            return at;
        }
        do {
            at = text.indexOf('"', at + 1);
            if (at < 0) {
                throw new NotationException(text, start, TEXTS.text("part.quote"), TEXTS.text("part.quoteRemedy"));
            }
            at++;
        } while (at < text.length() && text.charAt(at) == '"');
        return at;
    }

    Resistor read(int start, int end) throws NotationException {
        boolean quoted = text.charAt(start) == '"';
        String word = quoted ? text.substring(start + 1, end - 1).replace("\"\"", "\"") : text.substring(start, end);
        Stock.Item item = stock.get(word);
        if (item != null) {
            return taken(item, start);
        }
        if (quoted) {
            throw unknown(word, start);
        }
        ResistanceText.Value value;
        try {
            value = ResistanceText.read(text, start, end);
        } catch (ResistanceText.Fault fault) {
            boolean looksLikeValue = "0123456789.".indexOf(text.charAt(start)) >= 0;
            if (fault.meantAsValue() || looksLikeValue && nearest(word).isEmpty()) {
                throw fault.said();
            }
            throw unknown(word, start);
        }
        if (options.valuesFromStock()
                && value.toleranceRatio().isEmpty()
                && value.ratedWatts().isEmpty()) {
            Optional<Stock.Item> only = ofValue(value.ohms(), start);
            if (only.isPresent()) {
                return taken(only.get(), start);
            }
        }
        return resistor(word, value, options.toleranceRatio());
    }

    static Resistor resistor(String id, ResistanceText.Value value, double usualToleranceRatio) {
        Optional<PowerRating> rating = value.ratedWatts().isEmpty()
                ? Optional.empty()
                : Optional.of(new PowerRating(
                        value.ratedWatts().getAsDouble(),
                        NetworkNotation.RATED_TO_CELSIUS,
                        NetworkNotation.ZERO_POWER_CELSIUS));
        double tolerance = value.toleranceRatio().orElse(usualToleranceRatio);
        return new Resistor(id, value.ohms(), tolerance, rating, PartTraits.NONE);
    }

    private Resistor taken(Stock.Item item, int start) throws NotationException {
        String id = item.resistor().id();
        int pieces = used.merge(id, 1, Integer::sum);
        if (options.countsChecked() && pieces > item.count()) {
            throw new NotationException(
                    text,
                    start,
                    TEXTS.text("part.tooMany", Integer.toString(pieces), shown(id), Integer.toString(item.count())),
                    TEXTS.text("part.tooManyRemedy"));
        }
        return item.resistor();
    }

    private Optional<Stock.Item> ofValue(double ohms, int start) throws NotationException {
        List<Stock.Item> same = stock.values().stream()
                .filter(item -> Math.abs(item.resistor().ohms() - ohms) <= SAME_VALUE * ohms)
                .toList();
        if (same.size() > 1) {
            throw new NotationException(
                    text, start, TEXTS.text("part.several"), TEXTS.text("part.severalRemedy", listed(same)));
        }
        return same.stream().findFirst();
    }

    private NotationException unknown(String word, int start) {
        String remedy;
        Optional<String> near = nearest(word);
        if (near.isPresent()) {
            remedy = TEXTS.text("part.near", shown(near.get()));
        } else if (stock.isEmpty()) {
            remedy = TEXTS.text("part.emptyStock");
        } else {
            remedy = TEXTS.text("part.such", listed(new ArrayList<>(stock.values())));
        }
        return new NotationException(text, start, TEXTS.text("part.unknown", shown(word)), remedy);
    }

    private static String listed(List<Stock.Item> items) {
        return items.stream()
                .limit(IDS_SHOWN)
                .map(item -> "\"" + shown(item.resistor().id()) + "\"")
                .collect(Collectors.joining(TEXTS.text("part.or")));
    }

    private static String shown(String id) {
        return id.length() <= LETTERS_SHOWN ? id : id.substring(0, LETTERS_SHOWN) + "...";
    }

    /** The id that differs by the fewest letters, when those are at most a third of the word. */
    private Optional<String> nearest(String word) {
        if (word.length() > LETTERS_SHOWN) {
            return Optional.empty();
        }
        int best = Math.max(1, word.length() / 3) + 1;
        String nearest = null;
        for (String id : stock.keySet()) {
            int distance = id.length() > 2 * LETTERS_SHOWN ? best : distance(word, id);
            if (distance < best) {
                best = distance;
                nearest = id;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** Letters to insert, delete or replace (Levenshtein's distance), capitals counting as small letters. */
    private static int distance(String left, String right) {
        int[] row = new int[right.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= left.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                char one = Character.toLowerCase(left.charAt(i - 1));
                char other = Character.toLowerCase(right.charAt(j - 1));
                int replaced = diagonal + (one == other ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[right.length()];
    }
}
