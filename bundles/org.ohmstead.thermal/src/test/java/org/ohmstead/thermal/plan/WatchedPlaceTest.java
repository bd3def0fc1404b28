// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.FosterChain;
import org.ohmstead.thermal.FosterStage;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;

/** How the points of a model are put together as places. */
class WatchedPlaceTest {
    private static HeatPoint point(String id, double limit) {
        return new HeatPoint(id, "place " + id, limit > 0 ? OptionalDouble.of(limit) : OptionalDouble.empty());
    }

    private static HeatModel model() {
        HeatModel.Builder builder = new HeatModel.Builder();
        int source = builder.source("amplifier");
        int mode = builder.mode(900, new int[] {source}, new double[] {0.45});
        builder.point(point("case.least", 80), new int[] {mode}, new double[] {1}, new int[0], new double[0]);
        builder.point(point("device", 150), new int[] {mode}, new double[] {1}, new int[] {source}, new double[] {0.1});
        builder.point(point("case.likely", 0), new int[] {mode}, new double[] {0.9}, new int[0], new double[0]);
        builder.chain(
                point("cable", 70),
                "cable",
                new FosterChain(List.of(new FosterStage(2, 300), new FosterStage(0.5, 20))));
        return builder.build();
    }

    @ParameterizedTest
    @CsvSource({
        "case.least,case",
        "case.middle,case",
        "case.most,case",
        "device.likely,device",
        "case,case",
        "cable,cable",
        "part.8R-250W.rating,part.8R-250W.rating",
    })
    void copiesOfABodyHaveOneName(String pointId, String key) {
        assertEquals(key, WatchedPlace.key(pointId));
    }

    @Test
    void copiesOfABodyAreOnePlaceWithTheirRangeAndLimit() {
        List<WatchedPlace> places = WatchedPlace.of(model());
        assertEquals(
                List.of("case", "device", "cable"),
                places.stream().map(WatchedPlace::key).toList());
        WatchedPlace body = places.get(0);
        List<Double> celsius = List.of(70.0, 100.0, 60.0, 65.0);
        assertEquals(new Range(60, 70), body.celsius(celsius));
        assertEquals(OptionalDouble.of(80), body.limitCelsius());
        assertEquals(2, body.likely().orElseThrow());
        assertEquals(List.of(0, 2), body.points());
        assertEquals(OptionalDouble.of(10), body.roomKelvin(celsius));
        assertEquals("cable", WatchedPlace.tightest(places, celsius).key());
        assertEquals(
                "case",
                WatchedPlace.tightest(places, List.of(78.0, 100.0, 60.0, 65.0)).key());
    }

    @Test
    void aModelWithLowerLimitsWarmsAlike() {
        HeatModel model = model();
        HeatModel lowered = model.withLimitsLowered(Map.of("device", 20.0, "case.likely", 5.0));
        assertEquals(130, lowered.points().get(1).limitCelsius().orElseThrow(), 1e-12);
        assertEquals(80, lowered.points().get(0).limitCelsius().orElseThrow(), 1e-12);
        assertEquals(OptionalDouble.empty(), lowered.points().get(2).limitCelsius());
        Random random = new Random(3);
        double[] one = model.cold();
        double[] other = lowered.cold();
        for (int step = 0; step < 50; step++) {
            double[] watts = {100 * random.nextDouble(), 30 * random.nextDouble()};
            double seconds = 200 * random.nextDouble();
            model.advance(one, watts, seconds);
            lowered.advance(other, watts, seconds);
            for (int point = 0; point < model.points().size(); point++) {
                assertEquals(model.riseKelvin(point, one, watts), lowered.riseKelvin(point, other, watts), 1e-9);
            }
        }
    }
}
