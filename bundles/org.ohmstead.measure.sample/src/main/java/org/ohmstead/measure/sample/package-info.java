// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Plug-ins to begin one's own from: {@link org.ohmstead.measure.sample.Hum} is a measurement,
 * {@link org.ohmstead.measure.sample.DividerDriver} a bench driver. They come by the update site and are not in the product. Their tests
 * extend the contracts of {@code org.ohmstead.measure.testkit}.
 *
 * <pre>{@code
 * MeasurementInfo info = new Hum().info();
 * Settings settings = Settings.of(info.settings(), Map.of("mainsHz", "60"));
 * }</pre>
 */
package org.ohmstead.measure.sample;
