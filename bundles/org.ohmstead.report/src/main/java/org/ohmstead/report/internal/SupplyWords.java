// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.curves.LoadCurve;

/**
 * What the curves say about the amplifier's supply, in sentences. Loads of which nearly the same is said share one, with the
 * range of the figures.
 */
final class SupplyWords {
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");
    private static final double NEARLY_SAME_RATIO = 1.1;

    private final List<String> loads = new ArrayList<>();
    private final List<String> sentences = new ArrayList<>();

    private SupplyWords() {}

    static List<String> of(List<CurveGroup> groups) {
        List<String> lines = new ArrayList<>();
        for (CurveGroup group : groups) {
            List<SupplyWords> shared = new ArrayList<>();
            for (LoadCurve curve : group.curves()) {
                add(shared, curve.curve().describe(), Figures.brief(curve.nominalLoadOhms(), 4));
            }
            String head =
                    Words.of(group.kind()) + " power, " + Words.of(group.mode()).toLowerCase(Locale.ROOT) + ", ";
            shared.forEach(each -> lines.add(head + listed(each.loads) + "\u00a0\u03a9: " + merged(each.sentences)));
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
            double first = Double.parseDouble(ours.get(index));
            double second = Double.parseDouble(theirs.get(index));
            if (Math.max(first, second) > NEARLY_SAME_RATIO * Math.min(first, second)) {
                return false;
            }
        }
        return true;
    }

    /** Returns one sentence for several that differ in numbers only: a number that differs becomes "16 to 17". */
    static String merged(List<String> sentences) {
        Matcher matcher = NUMBER.matcher(sentences.get(0));
        StringBuilder text = new StringBuilder();
        for (int index = 0; matcher.find(); index++) {
            matcher.appendReplacement(text, range(sentences, index));
        }
        return matcher.appendTail(text).toString();
    }

    private static String range(List<String> sentences, int index) {
        List<String> texts = sentences.stream()
                .map(sentence -> numbers(sentence).get(index))
                .sorted((one, other) -> Double.compare(Double.parseDouble(one), Double.parseDouble(other)))
                .distinct()
                .toList();
        String lowest = texts.get(0);
        return texts.size() == 1 ? lowest : lowest + " to " + texts.get(texts.size() - 1);
    }

    private static List<String> numbers(String sentence) {
        return NUMBER.matcher(sentence).results().map(result -> result.group()).toList();
    }

    private static String listed(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }
}
