// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Heat and supply of a bench: what an amplifier turns into heat at a level ({@link org.ohmstead.thermal.StepHeat}), how hot that makes it and
 * the parts of its load ({@link org.ohmstead.thermal.HeatModel}), how long and how often it may be on ({@link
 * org.ohmstead.thermal.HeatLimits}), what a logged warm-up tells ({@link org.ohmstead.thermal.HeatIdentification}), and what current the
 * supply, its cable and its fuses carry. Temperatures follow closed forms, so that a step of a day is as right as one of a millisecond.
 *
 * <pre>{@code
 * HeatPoint body = new HeatPoint("case", "case", OptionalDouble.of(80));
 * HeatModel model = new HeatModel.Builder().chain(body, "amplifier", FosterChain.of(1.2, 500)).build();
 * String sentence = new HeatLimits(model, 25, 5).onTime(model.cold(), new double[] {100}).sentence();
 * }</pre>
 */
package org.ohmstead.thermal;
