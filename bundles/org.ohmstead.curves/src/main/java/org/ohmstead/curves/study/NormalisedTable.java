// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;

/**
 * Power at a set of supply voltages, for each load of a study.
 *
 * @param supplyVolts the columns
 * @param rows one for each load
 */
public record NormalisedTable(List<Double> supplyVolts, List<Row> rows) {
    /** The usual set: loaded battery, rested battery, charger, engine running (common practice, no source). */
    public static final List<Double> USUAL_VOLTS = List.of(12.0, 12.6, 13.8, 14.4);

    /** Copies the lists. */
    public NormalisedTable {
        supplyVolts = List.copyOf(supplyVolts);
        rows = List.copyOf(rows);
    }

    /**
     * The powers of one load.
     *
     * @param load the load
     * @param predictions one for each column
     */
    public record Row(PowerStudy.PlacedLoad load, List<PowerPrediction> predictions) {

        /** Copies the list. */
        public Row {
            predictions = List.copyOf(predictions);
        }
    }

    /**
     * Returns the table of a study.
     *
     * @param study the study
     * @param supplyVolts the columns, each above 0
     */
    public static NormalisedTable of(PowerStudy study, List<Double> supplyVolts) {
        List<Row> rows = new ArrayList<>();
        for (PowerStudy.PlacedLoad load : study.loads()) {
            List<PowerPrediction> predictions = supplyVolts.stream()
                    .map(volts -> study.predict(volts, load.loadOhms(), load.mode()))
                    .toList();
            rows.add(new Row(load, predictions));
        }
        return new NormalisedTable(supplyVolts, rows);
    }
}
