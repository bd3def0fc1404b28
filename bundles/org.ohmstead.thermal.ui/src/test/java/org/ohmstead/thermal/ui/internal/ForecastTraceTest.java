// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.thermal.FosterChain;
import org.ohmstead.thermal.FosterStage;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.ScheduledJob;

/** Two thermal resistances and capacities of one case, in closed form: T = 25 + P R (1 - exp(-t / RC)) while on. */
class ForecastTraceTest {
    private static final double AIR = 25;
    private static final double WATTS = 100;
    private static final double SECONDS = 300;
    private static final double REST = 120;
    private static final double SAME_KELVIN = 1e-9;
    private static final double LEAST_TAU = 1300;
    private static final double MOST_TAU = 1600;
    private static final double KELVIN_PER_WATT = 0.5;

    private static ScheduleTask task() {
        HeatModel.Builder builder = new HeatModel.Builder();
        chain(builder, "case.least", LEAST_TAU, OptionalDouble.of(80));
        chain(builder, "case.likely", 1450, OptionalDouble.empty());
        chain(builder, "case.most", MOST_TAU, OptionalDouble.of(80));
        HeatJob first = new HeatJob("one", SECONDS, List.of(WATTS), Map.of("case.most", 2.0), WATTS, 0, 0);
        HeatJob second = HeatJob.of("two", SECONDS, List.of(WATTS)).withLeastRestSeconds(REST);
        return ScheduleTask.of(builder.build(), AIR, 5, List.of(first, second));
    }

    private static void chain(HeatModel.Builder builder, String id, double tau, OptionalDouble limit) {
        builder.chain(
                new HeatPoint(id, "case of the amplifier", limit),
                "amplifier",
                new FosterChain(List.of(new FosterStage(KELVIN_PER_WATT, tau))));
    }

    private static double warmed(double tau) {
        return KELVIN_PER_WATT * WATTS * (1 - Math.exp(-SECONDS / tau));
    }

    private static ForecastTrace trace() {
        ScheduleTask task = task();
        List<ForecastTrace> traces = ForecastTrace.of(task, ForecastCourse.heedless(task));
        assertEquals(1, traces.size());
        return traces.get(0);
    }

    private static ForecastTrace.Sample last(ForecastTrace trace, double seconds) {
        return trace.samples().stream()
                .filter(sample -> sample.seconds() <= seconds + 1e-9)
                .reduce((one, other) -> other)
                .orElseThrow();
    }

    @Test
    void warmsAndCoolsAsTheClosedFormSays() {
        ForecastTrace trace = trace();
        // While nothing comes after, the last sample at the end of a stretch is the first of the next.
        ForecastTrace.Sample cooled = last(trace, SECONDS + REST);
        assertEquals(AIR + warmed(LEAST_TAU) * Math.exp(-REST / LEAST_TAU), cooled.highCelsius(), SAME_KELVIN);
        assertEquals(AIR + warmed(MOST_TAU) * Math.exp(-REST / MOST_TAU), cooled.lowCelsius(), SAME_KELVIN);
        assertEquals(AIR + warmed(1450) * Math.exp(-REST / 1450), cooled.likelyCelsius(), SAME_KELVIN);
        assertEquals(
                2 * SECONDS + REST,
                trace.samples().get(trace.samples().size() - 1).seconds(),
                1e-9);
    }

    @Test
    void theLikelyLieswithinTheBandAndBurstsAreInIt() {
        for (ForecastTrace.Sample sample : trace().samples()) {
            assertTrue(sample.lowCelsius() <= sample.likelyCelsius() + SAME_KELVIN, sample::toString);
            assertTrue(sample.likelyCelsius() <= sample.highCelsius() + SAME_KELVIN, sample::toString);
        }
        // The bursts of the first job swing the copy of the greatest capacity by 2 K: at once, while all is at 25
        // degrees.
        assertEquals(AIR + 2, trace().samples().get(0).highCelsius(), SAME_KELVIN);
    }

    @Test
    void thePlaceIsAllCopiesOfItsBody() {
        ForecastPlace place = trace().place();
        assertEquals(ForecastPlace.Kind.CASE, place.kind());
        assertEquals(List.of(0, 2, 1), place.points());
        assertEquals(1, place.likely().orElseThrow());
        assertEquals(OptionalDouble.of(80), place.limitCelsius());
    }

    @Test
    void aRunWithoutHeedKeepsTimesAndPeaks() {
        Schedule course = ForecastCourse.heedless(task());
        assertEquals(2 * SECONDS + REST, course.totalSeconds(), 1e-9);
        assertEquals(2 * SECONDS, course.onSeconds(), 1e-9);
        assertEquals(REST, course.restSeconds(), 1e-9);
        ScheduledJob first = course.jobs().get(0);
        assertEquals(AIR + warmed(LEAST_TAU), first.peakCelsius().get(0), SAME_KELVIN);
        assertEquals(AIR + warmed(MOST_TAU) + 2, first.peakCelsius().get(2), SAME_KELVIN);
        ScheduledJob second = course.jobs().get(1);
        assertEquals(ScheduledJob.Cause.WISH, second.cause());
        assertEquals(SECONDS + REST, second.startSeconds(), 1e-9);
        double left = warmed(LEAST_TAU) * Math.exp(-(REST + SECONDS) / LEAST_TAU);
        assertEquals(AIR + left + warmed(LEAST_TAU), second.peakCelsius().get(0), SAME_KELVIN);
        // The first job takes what it gives off from the supply, and so does the second.
        assertEquals(2 * SECONDS * WATTS, course.energyJoules(), 1e-6);
    }
}
