// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.curves.LoadCurve;

/**
 * What the curves say about the amplifier's supply, in sentences. Loads of which nearly the same is said share one, with the
 * range of the figures.
 */
final class SupplyWords {
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");
    private static final double NEARLY_SAME_RATIO = 1.1;

    private final List<String> loads = new ArrayList<>();
    private final List<String> sentences = new ArrayList<>();

    private SupplyWords() {}

    static List<String> of(List<CurveGroup> groups, Speech speech) {
        List<String> lines = new ArrayList<>();
        for (CurveGroup group : groups) {
            List<SupplyWords> shared = new ArrayList<>();
            for (LoadCurve curve : group.curves()) {
                add(shared, speech.foreign(curve.curve().describe()), speech.brief(curve.nominalLoadOhms(), 4));
            }
            shared.forEach(each -> lines.add(speech.text(
                    "full.supply.line",
                    speech.of(group.kind()),
                    speech.within(group.mode()),
                    listed(each.loads, speech) + "\u00a0\u03a9",
                    merged(each.sentences, speech))));
        }
        return lines;
    }

    private static void add(List<SupplyWords> shared, String sentence, String ohms) {
        SupplyWords home = shared.stream()
                .filter(each -> each.sentences.stream().allMatch(other -> nearlySame(other, sentence)))
                .findFirst()
                .orElseGet(() -> {
                    SupplyWords fresh = new SupplyWords();
                    shared.add(fresh);
                    return fresh;
                });
        home.loads.add(ohms);
        home.sentences.add(sentence);
    }

    /** Returns whether two sentences differ in nothing but numbers, and in those only little. */
    static boolean nearlySame(String one, String other) {
        if (!NUMBER.matcher(one).replaceAll("#").equals(NUMBER.matcher(other).replaceAll("#"))) {
            return false;
        }
        List<String> ours = numbers(one);
        List<String> theirs = numbers(other);
        for (int index = 0; index < ours.size(); index++) {
            double first = value(ours.get(index));
            double second = value(theirs.get(index));
            if (Math.max(first, second) > NEARLY_SAME_RATIO * Math.min(first, second)) {
                return false;
            }
        }
        return true;
    }

    /** Returns one sentence for several that differ in numbers only: a number that differs becomes "16 to 17". */
    static String merged(List<String> sentences, Speech speech) {
        Matcher matcher = NUMBER.matcher(sentences.get(0));
        StringBuilder text = new StringBuilder();
        for (int index = 0; matcher.find(); index++) {
            matcher.appendReplacement(text, range(sentences, index, speech));
        }
        return matcher.appendTail(text).toString();
    }

    private static String range(List<String> sentences, int index, Speech speech) {
        List<String> texts = sentences.stream()
                .map(sentence -> numbers(sentence).get(index))
                .sorted((one, other) -> Double.compare(value(one), value(other)))
                .distinct()
                .toList();
        String lowest = texts.get(0);
        return texts.size() == 1 ? lowest : speech.text("full.supply.range", lowest, texts.get(texts.size() - 1));
    }

    private static double value(String number) {
        return Double.parseDouble(number.replace(',', '.'));
    }

    private static List<String> numbers(String sentence) {
        return NUMBER.matcher(sentence).results().map(result -> result.group()).toList();
    }

    private static String listed(List<String> words, Speech speech) {
        int last = words.size() - 1;
        return last == 0
                ? words.get(0)
                : speech.text("full.supply.and", String.join(", ", words.subList(0, last)), words.get(last));
    }
}
