// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.OptionalDouble;
import org.ohmstead.model.EndPointOutcome;

/**
 * Where a sweep of levels meets its end point.
 *
 * @param outcome whether it does
 * @param powerWatts power there: interpolated, or that of the last or first level when the end point lies outside the sweep
 * @param outputVoltsRms output volts there, RMS
 * @param thdFRatio harmonics over the fundamental there
 * @param supplyVolts direct volts at the terminals there
 * @param supplyAmps supply current there in amperes, when it was read
 * @param nearestLevel index of the level nearest to it
 * @param interpolationHalfWidthWatts half-width of the interval that the choice of interpolation leaves open, in watts
 */
public record EndPointResult(
        EndPointOutcome outcome,
        double powerWatts,
        double outputVoltsRms,
        double thdFRatio,
        double supplyVolts,
        OptionalDouble supplyAmps,
        int nearestLevel,
        double interpolationHalfWidthWatts) {}
