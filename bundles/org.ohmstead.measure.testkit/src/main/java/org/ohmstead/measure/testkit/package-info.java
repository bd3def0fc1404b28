// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Tests that every plug-in must pass, written once. Whoever writes a measurement or a bench driver extends
 * {@link org.ohmstead.measure.testkit.MeasurementContract} or {@link org.ohmstead.measure.testkit.BenchDriverContract} with a class of a few
 * lines and runs it with JUnit 5. {@link org.ohmstead.measure.testkit.PracticeBench} is a bench for that which needs nothing.
 *
 * <pre>{@code
 * class HumTest extends MeasurementContract {
 *     @Override
 *     protected Measurement measurement() {
 *         return new Hum();
 *     }
 * }
 * }</pre>
 */
package org.ohmstead.measure.testkit;
