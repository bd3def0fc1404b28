// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.quality.CochranTest;
import org.ohmstead.metrology.quality.PrecisionStudy;
import org.ohmstead.units.text.Messages;

/**
 * The values of a check standard in groups: by day, operator or bench. Repeatability and reproducibility are those of ISO 5725-2, their
 * limits those of ISO 5725-6.
 *
 * @param what one group in a word, such as "operator"
 * @param unit of the values; may be empty
 * @param names of the groups
 * @param sizes how many values each has
 * @param means of each
 * @param precision repeatability and reproducibility
 * @param cochran whether one group scatters more than the others; empty with fewer than two groups of two values
 * @param suspect name of the group that it is about; empty with it
 */
public record GroupStudy(
        String what,
        String unit,
        List<String> names,
        List<Integer> sizes,
        List<Double> means,
        PrecisionStudy precision,
        Optional<CochranTest.Outcome> cochran,
        Optional<String> suspect) {
    private static final Messages TEXTS = Messages.of(GroupStudy.class);

    /** Copies the lists. */
    public GroupStudy {
        names = List.copyOf(names);
        sizes = List.copyOf(sizes);
        means = List.copyOf(means);
    }

    /**
     * Returns the study, or nothing with fewer than two groups or no group of two values.
     *
     * @param what one group in a word
     * @param unit of the values; may be empty
     * @param groups the values by the name of their group
     * @param significance risk of a false alarm of Cochran's test, strictly between 0 and 1
     */
    static Optional<GroupStudy> of(String what, String unit, Map<String, double[]> groups, double significance) {
        List<String> names = List.copyOf(groups.keySet());
        List<double[]> values = names.stream().map(groups::get).toList();
        int count = values.stream().mapToInt(group -> group.length).sum();
        if (values.size() < 2 || count <= values.size()) {
            return Optional.empty();
        }
        List<String> repeated =
                names.stream().filter(name -> groups.get(name).length > 1).toList();
        Optional<CochranTest.Outcome> cochran = repeated.size() < 2
                ? Optional.empty()
                : Optional.of(
                        CochranTest.test(repeated.stream().map(groups::get).toList(), significance));
        return Optional.of(new GroupStudy(
                what,
                unit,
                names,
                values.stream().map(group -> group.length).toList(),
                values.stream()
                        .map(group -> Arrays.stream(group).average().orElseThrow())
                        .toList(),
                PrecisionStudy.of(values),
                cochran,
                cochran.map(outcome -> repeated.get(outcome.index()))));
    }

    /** Returns what came out, in whole sentences. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>(List.of(precision.sentence(what, unit)));
        cochran.ifPresent(outcome -> sentences.add(outcome.outlier() ? scatterSentence() : TEXTS.text("even." + what)));
        return List.copyOf(sentences);
    }

    /** Returns which group scatters more than the others, in a whole sentence; only when one does. */
    String scatterSentence() {
        return TEXTS.text(
                "scatter." + what,
                suspect.orElseThrow(),
                Words.uncertainty(cochran.orElseThrow().standardDeviation(), unit));
    }
}
