// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The built-in benches: a simulated one ({@link org.ohmstead.measure.bench.SimulatedBenchDriver}), captures that were recorded before
 * ({@link org.ohmstead.measure.bench.ReplayedBenchDriver}), a person who types readings in
 * ({@link org.ohmstead.measure.bench.TypedBenchDriver}) and a sound card ({@link org.ohmstead.measure.bench.SoundCardBenchDriver}).
 *
 * <pre>{@code
 * BenchDriver driver = new SimulatedBenchDriver();
 * Settings settings = Settings.of(driver.info().settings(), Map.of("ideal", "true", "clipVolts", "20"));
 * try (Bench bench = driver.open(subject, settings)) {
 *     bench.connect(Mode.STEREO, subject.load());
 *     bench.setSupplyVolts(14.4);
 *     bench.feed(Feed.Tone.of(1000, -12));
 *     Acquisition recorded = bench.acquire(0.1);
 * }
 * }</pre>
 */
package org.ohmstead.measure.bench;
