// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Power against supply voltage: a curve fitted through readings of an amplifier, what it predicts at another voltage
 * and how sure that is, and what it says about supply and output stage. A curve belongs to one load, one mode and one
 * end point; {@link org.ohmstead.curves.JointFit} looks at several loads at once.
 *
 * <pre>{@code
 * List<PowerPoint> points = List.of(
 *         new PowerPoint(12.3, 137, 2, "battery"),
 *         new PowerPoint(13.46, 166, 2, "charger"),
 *         new PowerPoint(14.09, 182, 2, "engine running"));
 * PowerCurve curve = PowerCurveFit.fit(points, 2.0);
 * Prediction atRating = curve.predict(14.4);
 * CoverageInterval interval = atRating.confidenceInterval(0.95);
 * String inWords = curve.describe();
 * }</pre>
 */
package org.ohmstead.curves;
