// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * When to test what, so that nothing gets too hot. {@link org.ohmstead.thermal.plan.PlanForecast} tells what the steps
 * of a project draw and heat, and {@link org.ohmstead.thermal.plan.Scheduler} finds the order and the rests of shortest
 * total time that keep all temperatures below their limits, with a lower bound that tells how far from the shortest
 * possible it may be. {@link org.ohmstead.thermal.plan.Reschedule} and {@link org.ohmstead.thermal.plan.StateEstimate}
 * do it again in the middle of a run from measured temperatures;
 * {@link org.ohmstead.thermal.plan.ThermalPrecautions} and {@link org.ohmstead.thermal.plan.StopLimits} say what to
 * mind. Local codes and licensed practice come before anything that is forecast here.
 *
 * <pre>{@code
 * PlanForecast forecast = PlanForecast.of(project, sharing);
 * ScheduleAnswer answer = Scheduler.run(forecast.task().orElseThrow(), SearchEffort.USUAL, () -> false, done -> {});
 * List<Problem> problems = ThermalPrecautions.of(forecast, Optional.of(answer));
 * }</pre>
 */
package org.ohmstead.thermal.plan;
