// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Runs measurements on benches and carries out plans, whatever the plug-ins do. {@link org.ohmstead.measure.engine.Catalog} knows the
 * plug-ins, {@link org.ohmstead.measure.engine.Runner} makes one measurement after the other on one bench, and
 * {@link org.ohmstead.measure.engine.PlanRun} carries out a plan and logs each result at once. A plug-in that throws, hangs, floods,
 * returns nonsense or goes away ends its own run with a sentence that names it, and nothing else.
 *
 * <pre>{@code
 * Runner runner = new Runner(catalog, new BenchChoice("org.example.bench", Map.of()), RunLimits.usual());
 * PlanRun run = new PlanRun(setup, catalog, runner, log, Rests.NONE);
 * for (DryStep step : run.dryRun().steps()) {
 *     show(step.item(), step.problems(), step.stopLimits());
 * }
 * run.confirm("s3", problem, "N. N.", "the load is water-cooled");
 * PlanState state = run.runAll();
 * }</pre>
 */
package org.ohmstead.measure.engine;
