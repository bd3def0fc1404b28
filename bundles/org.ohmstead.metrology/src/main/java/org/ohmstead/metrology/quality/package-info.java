// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The quality of a test bench over time: control charts of a check standard with run rules, tests for drift, outliers
 * among readings and among groups, repeatability and reproducibility, and how much operators, benches and chance each
 * add to the scatter. Every result is a record that says in whole sentences what it means; nothing here keeps state.
 *
 * <pre>{@code
 * IndividualsChart chart = IndividualsChart.of(first20Readings);
 * for (RunSignal signal : chart.signals(allReadings, RunRule.ZONE_TESTS)) {
 *     warn(signal.sentence());
 * }
 * PrecisionStudy study = PrecisionStudy.of(readingsOfEachOperator);
 * double limitWatts = study.repeatabilityLimit();
 * }</pre>
 */
package org.ohmstead.metrology.quality;
