// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The project that every part of the workbench shares: the amplifier and its ratings, the bench, the loads, the plan, and the shape
 * of a reading. All of it is immutable records in SI units; a change is another record.
 *
 * <pre>{@code
 * Rating rating = new Rating("r1", PowerKind.CONTINUOUS, Mode.STEREO, 4, 90, 14.4, 0.01, 1000, "2 x 90 W into 4 ohm");
 * Amplifier amplifier = project.amplifier().withRatings(List.of(rating));
 * Project changed = project.withAmplifier(amplifier);
 * List<Problem> problems = ProjectChecks.check(changed, LocalDate.of(2026, 3, 2));
 * }</pre>
 */
package org.ohmstead.model;
