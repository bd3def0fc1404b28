// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import java.util.Optional;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Observation;

/**
 * How far a run is.
 *
 * @param doneRatio 0 to 1
 * @param what it does now; empty before it says so
 * @param live figures that may still change
 * @param recordedCount number of recordings that were kept
 * @param lines what it said it did, the newest last; of very many only the last ones
 * @param linesLeftOut how many were left out
 * @param newest what was last recorded and kept
 * @param meters what the meters last showed, whoever looked: the measurement, or the watch over the stop limits
 */
public record ProgressView(
        double doneRatio,
        String what,
        List<Figure> live,
        int recordedCount,
        List<String> lines,
        long linesLeftOut,
        Optional<Acquisition> newest,
        Optional<Observation> meters) {
    public ProgressView {
        live = List.copyOf(live);
        lines = List.copyOf(lines);
    }
}
