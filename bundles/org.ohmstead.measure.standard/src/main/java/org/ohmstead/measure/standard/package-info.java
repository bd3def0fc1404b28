// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The built-in measurements, by the same interface as those of third parties: {@link org.ohmstead.measure.standard.PowerAtEndPoint} and
 * {@link org.ohmstead.measure.standard.BurstPower}, {@link org.ohmstead.measure.standard.PowerAgainstFrequency},
 * {@link org.ohmstead.measure.standard.EfficiencyAndSupply}, {@link org.ohmstead.measure.standard.OutputImpedance},
 * {@link org.ohmstead.measure.standard.FrequencyResponse}, {@link org.ohmstead.measure.standard.ResidualNoise},
 * {@link org.ohmstead.measure.standard.ChannelSeparation}, {@link org.ohmstead.measure.standard.GainAndSensitivity},
 * {@link org.ohmstead.measure.standard.ChannelMatch} and {@link org.ohmstead.measure.standard.IdleDraw}. Each says in its info what it
 * follows. {@link org.ohmstead.measure.standard.PowerProcedure} makes readings out of what was recorded at each level of a step.
 *
 * <pre>{@code
 * PowerProcedure procedure = new PowerProcedure(project, revision, "0.1.0", "M. Tester");
 * Reading reading = procedure.evaluate(step, recordedLevels);   // one step, all its levels
 * reading.weakestChannel().powerWatts();
 * }</pre>
 */
package org.ohmstead.measure.standard;
