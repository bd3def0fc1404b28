// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.ohmstead.metrology.quality.GaugeStudy;
import org.ohmstead.model.CheckStandard;

/**
 * Whether the bench tells several check standards apart that are measured in the same unit: each of some operators, or benches, measured
 * each of them at least twice.
 *
 * @param what one column in a word: "operator" or "bench"
 * @param unit of the values; may be empty
 * @param items names of the check standards
 * @param columns names of the operators or benches
 * @param repeats how many values of each pair count
 * @param study what came out
 */
public record GaugeReview(
        String what, String unit, List<String> items, List<String> columns, int repeats, GaugeStudy study) {
    /** Copies the lists. */
    public GaugeReview {
        items = List.copyOf(items);
        columns = List.copyOf(columns);
    }

    /**
     * Returns the studies that the values of several check standards allow, by operator and by bench for each unit; empty when there is
     * none.
     *
     * @param reviews of the check standards, see {@link QualityReview#all}
     */
    public static List<GaugeReview> of(List<QualityReview> reviews) {
        Map<String, List<QualityReview>> byUnit = new LinkedHashMap<>();
        for (QualityReview review : reviews) {
            CheckStandard standard = review.standard();
            byUnit.computeIfAbsent(standard.unit(), any -> new ArrayList<>()).add(review);
        }
        List<GaugeReview> found = new ArrayList<>();
        byUnit.forEach((unit, alike) -> {
            add(found, "operator", unit, alike, CheckValue::operator);
            add(found, "bench", unit, alike, CheckValue::bench);
        });
        return List.copyOf(found);
    }

    private static void add(
            List<GaugeReview> found,
            String what,
            String unit,
            List<QualityReview> reviews,
            Function<CheckValue, String> column) {
        List<CrossedCells.Placed> placed = new ArrayList<>();
        for (QualityReview review : reviews) {
            List<CheckValue> all = new ArrayList<>(review.values().own());
            all.addAll(review.values().elsewhere());
            all.sort(Comparator.comparing(CheckValue::takenAt));
            all.forEach(value ->
                    placed.add(new CrossedCells.Placed(review.standard().name(), column.apply(value), value.value())));
        }
        CrossedCells.of(placed)
                .ifPresent(cells -> found.add(new GaugeReview(
                        what,
                        unit,
                        cells.rows(),
                        cells.columns(),
                        cells.repeats(),
                        GaugeStudy.of(cells.values(), GaugeStudy.USUAL_POOLING))));
    }

    /** Returns what came out in whole sentences. */
    public String sentence() {
        return study.sentence(what, unit);
    }
}
