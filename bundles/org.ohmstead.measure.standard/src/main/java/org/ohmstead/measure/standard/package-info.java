// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The built-in procedures: they make readings out of what was recorded at each level of a step.
 *
 * <pre>{@code
 * PowerProcedure procedure = new PowerProcedure(project, revision, "0.1.0", "M. Tester");
 * Reading reading = procedure.evaluate(step, recordedLevels);   // one step, all its levels
 * reading.weakestChannel().powerWatts();
 * }</pre>
 */
package org.ohmstead.measure.standard;
