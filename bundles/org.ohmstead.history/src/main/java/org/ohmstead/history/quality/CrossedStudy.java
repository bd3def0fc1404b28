// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.List;
import java.util.Optional;
import org.ohmstead.metrology.quality.BenchStudy;
import org.ohmstead.metrology.quality.GaugeStudy;

/**
 * What operators and benches each add to the scatter of one check standard, when each of some operators has measured it at least twice on
 * each of some benches. Of each pair the newest values count, as many as the pair with the fewest has.
 *
 * @param operators who
 * @param benches where
 * @param repeats how many values of each pair count
 * @param study what came out
 */
public record CrossedStudy(List<String> operators, List<String> benches, int repeats, BenchStudy study) {
    /** Copies the lists. */
    public CrossedStudy {
        operators = List.copyOf(operators);
        benches = List.copyOf(benches);
    }

    /** Returns the study, or nothing when there are not two operators who both measured twice on two benches. */
    static Optional<CrossedStudy> of(List<CheckValue> values) {
        return CrossedCells.of(values.stream()
                        .map(value -> new CrossedCells.Placed(value.operator(), value.bench(), value.value()))
                        .toList())
                .map(cells -> new CrossedStudy(
                        cells.rows(),
                        cells.columns(),
                        cells.repeats(),
                        BenchStudy.of(cells.values(), GaugeStudy.USUAL_POOLING)));
    }
}
